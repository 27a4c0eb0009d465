-- Neovim as a second client of the language server, one that shares no code with
-- the extension. Opens a file and waits for its diagnostics, asks for what the
-- server says it can do, edits, and prints everything as one line of JSON.
--
--   WAYFILE_ASK='{"file":"a.ways","command":["node","dist/server.cjs","--stdio"],
--     "hover":[3,5],"insertAfter":7,"insert":["x"],"completion":[8,2]}' nvim --headless --clean -n -S nvim-client.lua
--
-- Positions are line and column, counted from 1. Written for Neovim 0.7, the one in
-- Debian 12. Ends with 1 on any failure.
local limit = 10000

local function main()
  local asked = vim.json.decode((assert(vim.env.WAYFILE_ASK, 'WAYFILE_ASK is not set')))
  local file = vim.fn.fnamemodify(asked.file, ':p')
  local root = vim.fn.fnamemodify(file, ':h')

  local result = { messages = {}, errors = vim.empty_dict() }
  local published, initialized, ended
  local function note(_, params) table.insert(result.messages, params.message) end
  local id = vim.lsp.start_client({
    cmd = asked.command,
    name = 'wayfile',
    root_dir = root,
    workspace_folders = { { uri = vim.uri_from_fname(root), name = 'root' } },
    get_language_id = function() return 'wayfile' end,
    on_init = function() initialized = true end,
    on_exit = function(code, signal) ended = { code = code, signal = signal } end,
    handlers = {
      ['textDocument/publishDiagnostics'] = function(_, params)
        if vim.uri_to_fname(params.uri) == file then published = params.diagnostics end
      end,
      ['window/logMessage'] = note,
      ['window/showMessage'] = note,
    },
  })
  assert(id, 'the server did not start')
  local client = vim.lsp.get_client_by_id(id)
  local function wait(what, condition)
    if not vim.wait(limit, condition, 5) then error('waited in vain for ' .. what) end
  end
  wait('the answer to initialize', function() return initialized or ended end)
  assert(not ended, 'the server ended at once')
  result.capabilities = client.server_capabilities

  vim.cmd('edit ' .. vim.fn.fnameescape(file))
  local buffer = vim.api.nvim_get_current_buf()
  assert(vim.lsp.buf_attach_client(buffer, id), 'could not attach')
  wait('diagnostics', function() return published end)
  result.diagnostics = published

  local document = { uri = vim.uri_from_bufnr(buffer) }
  local function ask(method, parameters)
    local whole = vim.tbl_extend('keep', parameters or {}, { textDocument = document })
    local response, failure = client.request_sync(method, whole, limit, buffer)
    if not response then error(method .. ': ' .. tostring(failure)) end
    if response.err then result.errors[method] = response.err end
    return response.result
  end
  local function at(place) return { position = { line = place[1] - 1, character = place[2] - 1 } } end
  result.hover = ask('textDocument/hover', at(asked.hover))
  result.symbols = ask('textDocument/documentSymbol')
  result.folding = ask('textDocument/foldingRange')
  local first = published[1]
  if first then
    result.codeActions = ask('textDocument/codeAction', { range = first.range, context = { diagnostics = { first } } })
  end

  -- An edit in the buffer, which the server hears of, and taken back.
  published = nil
  local above = asked.insertAfter
  vim.api.nvim_buf_set_lines(buffer, above, above, false, asked.insert)
  wait('diagnostics after the edit', function() return published end)
  result.diagnosticsAfterEdit = published
  result.completion = ask('textDocument/completion', at(asked.completion))
  vim.api.nvim_buf_set_lines(buffer, above, above + #asked.insert, false, {})

  -- Untidied, then formatted twice.
  local lines = vim.api.nvim_buf_get_lines(buffer, 0, -1, false)
  for i, line in ipairs(lines) do lines[i] = line:gsub('^ +', '') end
  vim.api.nvim_buf_set_lines(buffer, 0, -1, false, lines)
  local options = { options = { tabSize = 2, insertSpaces = true } }
  local edits = ask('textDocument/formatting', options)
  vim.lsp.util.apply_text_edits(vim.deepcopy(edits or {}), buffer, client.offset_encoding) -- it marks what it is given
  result.formatted = table.concat(vim.api.nvim_buf_get_lines(buffer, 0, -1, false), '\n') .. '\n'
  result.formattingAgain = ask('textDocument/formatting', options)

  vim.lsp.stop_client(id) -- shutdown and exit
  wait('the server to end', function() return ended end)
  result.exit = ended
  return result
end

local ok, result = pcall(main)
io.stdout:write(ok and vim.json.encode(result) or ('failed: ' .. tostring(result)), '\n')
io.stdout:flush()
vim.cmd(ok and 'qall!' or 'cquit! 1')
