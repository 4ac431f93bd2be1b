/** The page in a panel. It is fixed text: what a file says comes later, as messages, and is only ever text. */
export interface Parts {
  /** addresses that the panel may load */
  readonly script: string;
  readonly style: string;
  /** where the editor serves the files of an extension from */
  readonly source: string;
  /** of this page only */
  readonly nonce: string;
}

export const panelPage = (title: string, body: string, { script, style, source, nonce }: Parts): string => `<!DOCTYPE html>
<html lang="en">
<head>
  <meta charset="utf-8">
  <meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src ${source}; script-src 'nonce-${nonce}'">
  <meta name="viewport" content="width=device-width, initial-scale=1">
  <title>${title}</title>
  <link rel="stylesheet" href="${style}">
</head>
<body>${body}
  <script nonce="${nonce}" src="${script}"></script>
</body>
</html>
`;
