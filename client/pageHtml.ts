import { Uri, type Webview } from "vscode";

/** The page of the live view: it runs its own script and nothing else, and fetches nothing but its style. */
export function pageHtml(webview: Webview, extension: Uri): string {
  const address = (name: string): string => webview.asWebviewUri(Uri.joinPath(extension, "dist", name)).toString();
  const nonce = Array.from(crypto.getRandomValues(new Uint8Array(16)), (byte) =>
    byte.toString(16).padStart(2, "0"),
  ).join("");
  const policy = [
    "default-src 'none'",
    `style-src ${webview.cspSource}`,
    `script-src 'nonce-${nonce}'`,
    "base-uri 'none'",
    "form-action 'none'",
  ].join("; ");
  return `<!DOCTYPE html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Live Board</title>
<link rel="stylesheet" href="${address("page.css")}">
</head>
<body>
<div id="app"></div>
<script nonce="${nonce}" src="${address("page.js")}"></script>
</body>
</html>
`;
}
