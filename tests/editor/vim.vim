" Uses Platewright in Vim, without plugins and with ALE, as the page about other editors sets it up; PAGE is the whelk, WORDS and COLOURS are the table of colours and its page.
"   vim -N -e -s -u ~/.vimrc -i NONE -n -S tests/editor/vim.vim
set nomore
let s:passed = 0
let s:said = []

function s:Say(line)
  call add(s:said, a:line)
endfunction
function s:End(failed)
  call s:Say(s:passed . ' passed, ' . a:failed . ' failed')
  " In silent mode, this is what reaches the standard output.
  new
  call setline(1, s:said)
  %print
  if a:failed | cquit | else | qall! | endif
endfunction
function s:Step(name, Run)
  try
    call a:Run()
  catch
    call s:Say('  FAILED  ' . a:name)
    call s:Say(v:exception . ' ' . v:throwpoint)
    call s:End(1)
  endtry
  let s:passed += 1
  call s:Say('  passed  ' . a:name)
endfunction
function s:Assert(holds, otherwise)
  if !a:holds | throw 'not so: ' . string(a:otherwise) | endif
endfunction
function s:Wait(what, Look)
  let end = localtime() + 20
  while !a:Look()
    if localtime() > end | throw 'not within 20 s: ' . a:what | endif
    sleep 50m
  endwhile
endfunction

function s:Colours()
  execute 'edit' fnameescape($COLOURS)
  call s:Assert(&filetype ==# 'plate' && exists('b:current_syntax'), [&filetype])
  let wrong = []
  for row in readfile($WORDS)
    let [line, word, wanted] = split(row)
    let column = match(getline(line), '\V' . (word =~# '^\k' ? '\%(\k\|.\k\)\@<!' : '') . escape(word, '\')) + 1
    let is = substitute(synIDattr(synID(line, column, 1), 'name'), '^plate', '', '')
    if column < 1 || is !=? wanted | call add(wrong, [row, column, is]) | endif
  endfor
  call s:Assert(empty(wrong), wrong)
endfunction
call s:Step('words have their colours, and a torn line colours no other', function('s:Colours'))

function s:Make()
  execute 'edit' fnameescape($PAGE)
  silent make
  let found = filter(getqflist(), 'v:val.valid')
  let s:arms = filter(copy(found), 'v:val.text =~# "arms-mismatched"')
  call s:Assert(len(s:arms) == 1, found)
  call s:Assert(s:arms[0].type ==# 'w' && s:arms[0].text =~# '\<84 mm\>' && getline(s:arms[0].lnum) =~# 'beam object', s:arms)
  cfirst
  call s:Assert(getline('.') =~# 'beam object' && expand('<cword>') ==# 'object', [line('.'), col('.')])
endfunction
call s:Step(':make lists the findings where they are', function('s:Make'))

function s:TidyUp()
  let before = getline(1, '$')
  4s/laser red/laser    red/
  Tidy
  call s:Assert(getline(1, '$') ==# before, getline(1, '$'))
endfunction
call s:Step(':Tidy puts blanks in order and changes nothing else', function('s:TidyUp'))

function s:Lints()
  return map(copy(ale#engine#GetLoclist(bufnr('%'))), 'get(v:val, "code", "")')
endfunction
function s:Ale()
  call s:Assert(exists(':ALELint') == 2, 'ALE is not installed')
  ALELint
  call s:Wait('a finding arms-mismatched', {-> index(s:Lints(), 'arms-mismatched') >= 0})
endfunction
call s:Step('with ALE findings come from the server', function('s:Ale'))

function s:Longer()
  let long = search('-> M3: 377 mm', 'nw')
  call setline(long, substitute(getline(long), '377', '293', ''))
  ALELint
  call s:Wait('no finding arms-mismatched', {-> index(s:Lints(), 'arms-mismatched') < 0})
endfunction
call s:Step('and follow what is typed', function('s:Longer'))

function s:Define()
  call search('-> M3:', 'w')
  normal! w
  ALEGoToDefinition
  call s:Wait('the declaration of M3', {-> getline('.') =~# '^  mirror M3$'})
  call cursor(1, 1)
  call search('laser red')
  ALEHover
  call s:Wait('the facts of a laser', {-> !empty(filter(range(1, winnr('$')), {_, w -> join(getbufline(winbufnr(w), 1, '$')) =~# 'tube length' && bufname(winbufnr(w)) !~# 'whelk'}))})
endfunction
call s:Step('a name leads to its declaration, and hovering over a kind tells its facts', function('s:Define'))
call s:End(0)
