#!/usr/bin/env bash
# Installs the editor that the tests run in: a headless Chromium from Debian, and
# code-server, which carries VS Code's own server and workbench, from npm.
#
#   setup.sh [FOLDER [VERSION]]
#
# FOLDER   where to install, .editor in the repository by default. With any other
#          one, set WAYFILE_EDITOR to it when running the tests.
# VERSION  of code-server, by default the one in package.json. 4.103.2 is VS Code
#          1.103.2, the oldest that the extension supports; start the tests with
#          WAYFILE_EDITOR_NODE naming a Node 22 then.
#
# Run again on a finished folder it does nothing.
set -euo pipefail
here=$(cd "$(dirname "$0")" && pwd)
folder=${1:-$here/../../../.editor}
version=${2:-}
mkdir -p "$folder"
folder=$(cd "$folder" && pwd)

missing=()
need() { # COMMAND PACKAGE...
  if ! command -v "$1" >/dev/null; then missing+=("${@:2}"); fi
}
install_missing() {
  if [ ${#missing[@]} = 0 ]; then return; fi
  as_root apt-get update -qq
  as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends "${missing[@]}" >/dev/null
  missing=()
}
as_root() { if [ "$(id -u)" = 0 ]; then "$@"; else sudo "$@"; fi; }

need chromium chromium fonts-dejavu-core # without any font, screenshots are blank where text should be
need python3 python3                     # node-gyp compiles with these three
need make make
need g++ g++
install_missing

stamp=$folder/.installed-${version:-$(cksum <"$here/package-lock.json" | cut -d' ' -f1)}
if [ -e "$stamp" ]; then exit 0; fi
rm -f "$folder"/.installed-*

cp "$here/package.json" "$here/package-lock.json" "$folder"
cd "$folder"
# No install scripts: code-server's own compiles every native module of the server,
# which takes a minute and four -dev packages. Two are worth it: without them tests
# run all the same, but amid complaints.
if [ -z "$version" ]; then
  npm ci --ignore-scripts --loglevel=error
else
  npm install --no-save --no-package-lock --ignore-scripts --loglevel=error "code-server@$version"
fi
cd node_modules/code-server/lib/vscode
npm install --omit=dev --ignore-scripts --no-save --loglevel=error # the shrinkwrap in there is incomplete, so not npm ci
native=()
for name in @vscode/spdlog @vscode/native-watchdog native-watchdog; do
  if [ -d "node_modules/$name" ]; then native+=("$name"); fi
done
npm rebuild --loglevel=error "${native[@]}" || echo "Not compiled: ${native[*]}. The editor will complain, and work."

# Older versions fetch ripgrep in an install script. Without it workspace.findFiles finds nothing.
if [ -d node_modules/@vscode/ripgrep ] && [ ! -e node_modules/@vscode/ripgrep/bin/rg ]; then
  need rg ripgrep
  install_missing
  mkdir -p node_modules/@vscode/ripgrep/bin
  ln -s "$(command -v rg)" node_modules/@vscode/ripgrep/bin/rg
fi
touch "$stamp"
