-- Platewright in Neovim 0.7 or later. Goes to plugin/platewright.lua below ~/.config/nvim.
vim.api.nvim_create_autocmd({ 'BufRead', 'BufNewFile' }, { pattern = '*.plate', command = 'setfiletype plate' })
vim.api.nvim_create_autocmd('FileType', {
  pattern = 'plate',
  callback = function(opened)
    vim.bo[opened.buf].commentstring = '// %s'
    local folder = vim.fn.fnamemodify(vim.api.nvim_buf_get_name(opened.buf), ':p:h')
    local git = vim.fn.finddir('.git', folder .. ';')
    local server = {
      name = 'platewright',
      cmd = { 'platewright', 'lsp', '--stdio' },
      -- What pages name by `use` is looked for beside them, then here.
      root_dir = git == '' and folder or vim.fn.fnamemodify(git, ':p:h:h'),
    }
    -- 0.7 has no vim.lsp.start.
    if vim.lsp.start then vim.lsp.start(server) else vim.lsp.buf_attach_client(opened.buf, vim.lsp.start_client(server)) end
  end,
})
