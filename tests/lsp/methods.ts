/** Which methods of the protocol the server answers or uses, in words; and of the others why not. */
export const ANSWERED: Readonly<Record<string, string>> = {
  'initialize': '', 'shutdown': '', 'callHierarchy/incomingCalls': 'what light reaches a thing or a beam', 'callHierarchy/outgoingCalls': 'to what it goes on',
  'completionItem/resolve': 'the words beside an item', 'inlayHint/resolve': 'the chain of numbers behind a figure', 'textDocument/codeAction': 'fixes, layouts, values for `?`', 'textDocument/codeLens': 'ratio, exposure, light; what has changed since the last commit',
  'textDocument/completion': '', 'textDocument/definition': '', 'textDocument/diagnostic': 'with result ids', 'textDocument/documentHighlight': '', 'textDocument/documentLink': 'files that are used', 'textDocument/documentSymbol': '',
  'textDocument/foldingRange': '', 'textDocument/formatting': '', 'textDocument/hover': '', 'textDocument/inlayHint': '', 'textDocument/linkedEditingRange': 'names of a page', 'textDocument/onTypeFormatting': 'behind `}` and a line end',
  'textDocument/prepareCallHierarchy': '', 'textDocument/prepareRename': '', 'textDocument/rangeFormatting': '', 'textDocument/references': '', 'textDocument/rename': '', 'textDocument/selectionRange': '',
  'textDocument/semanticTokens/full': '', 'textDocument/semanticTokens/full/delta': 'to clients that say that they take it', 'textDocument/semanticTokens/range': '', 'textDocument/signatureHelp': 'functions, placements, readings',
  'workspace/diagnostic': 'to clients that ask for it by `checksAllPages`; without news the answer waits', 'workspace/symbol': '',
};
export const NOT_ANSWERED: Readonly<Record<string, string>> = {
  'codeAction/resolve': 'a fix is tried before it is offered, so that its edit is there', 'codeLens/resolve': 'figures come with their lines', 'documentLink/resolve': 'links come with their files', 'textDocument/colorPresentation': 'the language has no colours',
  'textDocument/documentColor': 'the language has no colours', 'textDocument/declaration': 'the same as the definition', 'textDocument/implementation': 'nothing is declared in one place and made in another', 'textDocument/typeDefinition': 'the kind of a thing is a word of the language',
  'textDocument/inlineCompletion': 'nothing is guessed', 'textDocument/inlineValue': 'nothing is run step by step', 'textDocument/moniker': 'names are found in the folders that are open', 'textDocument/prepareTypeHierarchy': 'kinds have no order among them',
  'textDocument/rangesFormatting': 'clients ask range by range', 'textDocument/willSaveWaitUntil': 'a save changes nothing', 'typeHierarchy/subtypes': 'kinds have no order among them', 'typeHierarchy/supertypes': 'kinds have no order among them',
  'workspace/executeCommand': 'commands are those of the client', 'workspace/textDocumentContent': 'the server makes no documents', 'workspace/willCreateFiles': 'a new page is named nowhere yet', 'workspace/willDeleteFiles': 'a finding tells what is missing then',
  'workspace/willRenameFiles': 'a finding tells what is missing then', 'workspaceSymbol/resolve': 'places come with the names',
};
/** Notifications, and what the server asks of a client: whether it is used. */
export const USED: Readonly<Record<string, string>> = {
  'exit': '', 'initialized': '', 'textDocument/didChange': 'piece by piece', 'textDocument/didClose': '', 'textDocument/didOpen': '', 'textDocument/didSave': 'without a watcher files are looked at again then', 'workspace/didChangeConfiguration': '',
  'workspace/didChangeWatchedFiles': '', 'workspace/didChangeWorkspaceFolders': '', 'textDocument/publishDiagnostics': 'to clients that do not ask for findings', 'window/logMessage': 'defects of the server only', 'client/registerCapability': 'watching of pages and settings',
  'workspace/codeLens/refresh': '', 'workspace/configuration': '', 'workspace/diagnostic/refresh': '', 'workspace/inlayHint/refresh': '', 'workspace/semanticTokens/refresh': '', 'workspace/workspaceFolders': '',
};
const NOTEBOOK = 'the language has no notebooks';
export const NOT_USED: Readonly<Record<string, string>> = {
  'notebookDocument/didChange': NOTEBOOK, 'notebookDocument/didClose': NOTEBOOK, 'notebookDocument/didOpen': NOTEBOOK, 'notebookDocument/didSave': NOTEBOOK, 'notebookDocument/sync': NOTEBOOK, 'textDocument/willSave': 'a save changes nothing',
  'window/workDoneProgress/cancel': 'nothing takes so long', 'window/workDoneProgress/create': 'nothing takes so long', 'workspace/didCreateFiles': 'watched files tell', 'workspace/didDeleteFiles': 'watched files tell', 'workspace/didRenameFiles': 'watched files tell',
  'telemetry/event': 'nothing is told to anybody', 'window/showMessage': 'what is wrong stands in the page', 'window/showMessageRequest': 'what is wrong stands in the page', 'client/unregisterCapability': 'what is registered stays', 'window/showDocument': 'opening is up to the client',
  'workspace/applyEdit': 'every edit is an answer, which the client makes', 'workspace/foldingRange/refresh': 'folds depend on the text of their page only', 'workspace/inlineValue/refresh': 'nothing is run step by step', 'workspace/textDocumentContent/refresh': 'the server makes no documents',
};
