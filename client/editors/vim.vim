" Platewright in Vim 8 or later. Goes to plugin/platewright.vim below ~/.vim.
autocmd BufRead,BufNewFile *.plate setfiletype plate

" :make lists the findings of the page; :cnext and :cprevious go through them.
autocmd FileType plate setlocal commentstring=//\ %s makeprg=platewright\ check\ %:S
autocmd FileType plate setlocal errorformat=%f:%l:%v:\ %trror:\ %m,%f:%l:%v:\ %tarning:\ %m,%f:%l:%v:\ %tote:\ %m,%f:%l:%v:\ hint:\ %m,%-G%.%#
" :Tidy puts blanks and indents in order.
autocmd FileType plate command! -buffer Tidy silent %!platewright format -

" With ALE (on Debian: vim-ale) findings appear while you type, and :ALEHover, :ALEComplete, :ALECodeAction, :ALERename and :ALEGoToDefinition answer.
try
  call ale#linter#Define('plate', {
    \ 'name': 'platewright',
    \ 'lsp': 'stdio',
    \ 'executable': 'platewright',
    \ 'command': '%e lsp --stdio',
    \ 'project_root': {page -> fnamemodify(bufname(page), ':p:h')},
    \ })
catch /^Vim\%((\a\+)\)\=:E117/
  " There is no ALE.
endtry
