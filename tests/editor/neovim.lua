-- Uses Platewright in Neovim, as the page about other editors sets it up. Written for 0.7, which Debian 12 has.
-- PAGE is the whelk, WORDS and COLOURS are the table of colours and its page.
--   nvim --headless -i NONE -n -c 'luafile tests/editor/neovim.lua'
local passed = 0

local function finish(failed)
  io.stdout:write(('%d passed, %d failed\n'):format(passed, failed))
  vim.cmd(failed == 0 and 'qall!' or 'cquit 1')
end

local function step(name, run)
  local fine, problem = pcall(run)
  if not fine then
    io.stdout:write(('  FAILED  %s\n%s\n'):format(name, problem))
    return finish(1)
  end
  passed = passed + 1
  io.stdout:write(('  passed  %s\n'):format(name))
end

local function wait(what, look)
  if not vim.wait(10000, look, 20) then error('not within 10 s: ' .. what, 2) end
end

step('words have their colours, and a torn line colours no other', function()
  vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.COLOURS))
  assert(vim.bo.filetype == 'plate' and vim.b.current_syntax == 'plate', vim.bo.filetype)
  local wrong = {}
  for _, row in ipairs(vim.fn.readfile(vim.env.WORDS)) do
    local line, word, wanted = unpack(vim.split(row, ' '))
    local start = vim.fn.match(vim.fn.getline(tonumber(line)), '\\V' .. (word:find('^[%w]') and '\\%(\\k\\|.\\k\\)\\@<!' or '') .. vim.fn.escape(word, '\\'))
    local is = vim.fn.synIDattr(vim.fn.synID(tonumber(line), start + 1, 1), 'name'):gsub('^plate', ''):lower()
    if start < 0 or is ~= wanted then table.insert(wrong, row .. ': ' .. is) end
  end
  assert(#wrong == 0, vim.inspect(wrong))
  vim.cmd('bwipeout')
end)

vim.cmd('edit ' .. vim.fn.fnameescape(vim.env.PAGE))
local page = vim.api.nvim_get_current_buf()
local original = vim.api.nvim_buf_get_lines(page, 0, -1, false)
local client, finding

local function mismatch()
  for _, found in ipairs(vim.diagnostic.get(page)) do
    if found.user_data.lsp.code == 'arms-mismatched' then return found end
  end
end

local function ask(method, params)
  params.textDocument = { uri = vim.uri_from_bufnr(page) }
  local answers = assert(vim.lsp.buf_request_sync(page, method, params, 5000), 'no answer within 5 s')
  local answer = answers[client]
  assert(answer and not answer.err, vim.inspect(answer))
  return assert(answer.result, 'an empty answer')
end

--- The server of the page; get_clients came with 0.10.
local function attached()
  local clients = vim.lsp.get_clients and vim.lsp.get_clients({ bufnr = page }) or vim.lsp.buf_get_clients(page)
  local _, found = next(clients)
  return found
end

step('opening a page starts the server', function()
  wait('attached and initialized', function() return attached() ~= nil and attached().initialized end)
  assert(attached().name == 'platewright')
  client = attached().id
end)

step('the object arm is 84 mm too long', function()
  wait('a finding arms-mismatched', function() return mismatch() ~= nil end)
  finding = mismatch()
  assert(finding.source == 'platewright', finding.source)
  assert(finding.message:find('%f[%d]84%f[%D]'), finding.message)
end)

step('hovering over a kind tells its facts', function()
  for number, line in ipairs(original) do
    local at = line:find('laser', 1, true)
    if at and not line:find('///', 1, true) then
      local contents = ask('textDocument/hover', { position = { line = number - 1, character = at } }).contents
      assert(contents.kind == 'markdown', contents.kind)
      assert(contents.value:find('tube length', 1, true), contents.value)
      return
    end
  end
  error('no laser on the page')
end)

step('a fix matches the arms', function()
  local range = {
    start = { line = finding.lnum, character = finding.col },
    ['end'] = { line = finding.end_lnum, character = finding.end_col },
  }
  local known = { range = range, message = finding.message, code = 'arms-mismatched', source = finding.source, severity = finding.severity }
  local actions = ask('textDocument/codeAction', { range = range, context = { diagnostics = { known }, only = { 'quickfix' } } })
  for _, action in ipairs(actions) do
    if action.title:find('^Shorten ') or action.title:find('^Lengthen ') then
      vim.lsp.util.apply_workspace_edit(action.edit, vim.lsp.get_client_by_id(client).offset_encoding)
      wait('no finding arms-mismatched', function() return mismatch() == nil end)
      return
    end
  end
  error('no fix that shortens or lengthens: ' .. vim.inspect(actions))
end)

step('it changed one line', function()
  local now, changed = vim.api.nvim_buf_get_lines(page, 0, -1, false), 0
  assert(#now == #original, 'number of lines')
  for number, line in ipairs(now) do
    if line ~= original[number] then changed = changed + 1 end
  end
  assert(changed == 1, changed .. ' lines changed')
end)

step('the server ends when asked to', function()
  vim.lsp.stop_client(client)
  wait('stopped', function() return vim.lsp.client_is_stopped(client) end)
end)

finish(0)
