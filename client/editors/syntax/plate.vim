" Colours of recording setups, for Vim and Neovim. Goes to syntax/plate.vim below ~/.vim or ~/.config/nvim.
if exists('b:current_syntax') | finish | endif

" Words: begin. `UPDATE=1 npx vitest run tests/client/editors.test.ts` writes them.
let s:statements = ['setup', 'inventory', 'use', 'beam', 'measured', 'moved', 'expect', 'aim', 'accept', 'let', 'variant', 'shot', 'process']
let s:phrased = ['aim', 'expect', 'accept', 'measured', 'moved']
let s:clauses = ['at', 'on', 'beyond', 'by', 'facing', 'heading', 'tilted', 'turning', 'from', 'to', 'for', 'std', 'x']
let s:kinds = ['half-wave plate', 'ground glass', 'attenuator', 'black card', 'collimator', 'beam stop', 'fill card', 'polarizer', 'aperture', 'diffuser', 'exposure', 'hologram', 'splitter', 'spreader', 'shutter', 'mirror', 'object', 'screen', 'string', 'viewer', 'laser', 'meter', 'plate', 'lamp', 'lens', 'room', 'slit', 'wall']
let s:functions = ['sqrt', 'abs', 'min', 'max', 'sin', 'cos', 'tan', 'asin', 'acos', 'atan']
" Words: end.

" Names hold hyphens and dots.
syntax iskeyword @,48-57,_,-,.,192-255
let s:no = '\%(' . join(s:clauses, '\|') . '\)\>'
" A number begins a word, or stands behind the sign that does.
let s:begin = '\%(\<\|\%(\<-\)\@1<=\)'
let s:digits = '\%(\d\+\%(\.\d\+\)\?\|\.\d\+\)'

syntax match plateName /\<\a\k*/
execute 'syntax match plateClause /\<' . s:no . '\%(\s*:\)\@!/'
execute 'syntax match plateFunction /\<\%(' . join(s:functions, '\|') . '\)\ze(/'
syntax match plateSign /->\|→\|±\|+\/-\|×÷\|\*\/\|<=\|>=\|[<>≤≥=×+−*]\|-/
syntax match plateAsked /?/ nextgroup=plateUnit skipwhite
syntax match plateUnit contained /"/
execute 'syntax match plateUnit contained /\%(' . s:no . '\)\@![[:alpha:]µ°%′″][[:alnum:]µ°%²³¹⁰⁴⁻\/·^-]*/'
syntax match plateBracket /)/ nextgroup=plateUnit skipwhite
execute 'syntax match plateNumber /' . s:begin . s:digits . '\%([eE][-+]\?\d\+\)\?/ nextgroup=plateInches,plateUnit skipwhite'
syntax match plateInches contained /\%(\d\)\@1<="/
execute 'syntax match plateNumber /' . s:begin . s:digits . ':' . s:digits . '[0-9.:]\@!/'
syntax match plateNumber /\<\d\{4}-\d\d-\d\d\%(T\d\d:\d\d\)\?[0-9-]\@!/
" A thing: its kind, then its name. A change in a variant begins with the name of one, which no list has.
execute 'syntax match plateKind /^\s*\zs\%(' . join(s:kinds, '\|') . '\)\ze\%(\s\|$\)/'
execute 'syntax match plateStatement /^\s*\zs\%(' . join(s:statements, '\|') . '\)\ze\%(\s\|$\)/'
" These are two words each, or begin as a statement does.
execute 'syntax match plateKind /^\s*\zs\%(' . join(filter(copy(s:kinds), 'v:val =~ " "'), '\|') . '\)\ze\s/'
execute 'syntax match plateFact /^\s*\zs\%(\%(' . join(s:phrased, '\|') . '\)\s\+\k\)\@!\a\k*\%(\s\+\a\k*\)*\ze\%(\s\+' . s:digits . '\)\?\s*:/'
" What is wanted is named behind these.
syntax match plateStatement /^\s*\zs\%(aim\|expect\)\ze\s/ nextgroup=plateFact skipwhite
execute 'syntax match plateFact contained /\%(' . s:no . '\)\@!\a\k*\%(\s\+\%(' . s:no . '\)\@!\a\k*\)*/'
" A line end ends a text, also where its quote is missing.
syntax match plateText /"\%([^"\\]\|\\.\)*\%("\|$\)/
syntax match plateComment /\/\/.*/
syntax match plateNote /\/\/\/.*/

highlight default link plateName Normal
highlight default link plateClause Keyword
highlight default link plateFunction Function
highlight default link plateSign Operator
highlight default link plateAsked Special
highlight default link plateUnit Type
highlight default link plateInches plateUnit
highlight default link plateNumber Number
highlight default link plateKind Type
highlight default link plateStatement Statement
highlight default link plateFact Identifier
highlight default link plateText String
highlight default link plateComment Comment
highlight default link plateNote SpecialComment
let b:current_syntax = 'plate'
