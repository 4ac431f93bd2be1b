/** Text that stays text in a page of HTML. */
export const escaped = (text: string): string => text.replace(/[\p{Cc}\p{Cs}\p{Bidi_Control}\ufffe\uffff]/gu, ' ').replace(/[&<>"']/g, c => `&#${c.charCodeAt(0)};`);

/** A page of one file: no script, and nothing that is read from elsewhere. @param body lines that are markup already */
export const htmlPage = (title: string, style: string, body: readonly string[]): string => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width">
<title>${escaped(title)}</title>
<style>${style}</style>
</head>
<body>
${body.join('\n')}
</body>
</html>
`;
