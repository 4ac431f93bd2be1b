-- Uses the server from Neovim, over stdio. Written for 0.7, the oldest that Debian 12 has: vim.lsp.start came later.
--   PAGE=whelk.plate nvim --headless -u NONE -i NONE -n -c 'luafile tests/editor/neovim.lua'
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

vim.cmd('edit ' .. vim.env.PAGE)
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

step('the server starts', function()
  client = vim.lsp.start_client({
    name = 'platewright',
    cmd = { 'node', 'dist/cli.cjs', 'lsp', '--stdio' },
    root_dir = vim.fn.fnamemodify(vim.env.PAGE, ':p:h'),
    get_language_id = function() return 'plate' end,
  })
  assert(client and vim.lsp.buf_attach_client(page, client))
  wait('initialized', function() return vim.lsp.get_client_by_id(client).initialized end)
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
