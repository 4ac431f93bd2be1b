import * as vscode from 'vscode';
import { closeAll, codeOf, equal, findings, matched, mismatch, ok, open, text, type, until } from './whelk.ts';

describe('findings', () => {
  afterEach(closeAll);

  it('tell that the object arm is 84 mm too long, on the object beam', async () => {
    const page = await open(text);
    const found = await mismatch(page);
    equal(found.source, 'platewright', 'source');
    // 410 + 377 + 468 + 300 = 1555 mm of object arm against 750 + 721 = 1471 mm of reference
    ok(/\b84\b/.test(found.message), `the message does not say 84: ${found.message}`);
    const lines = page.getText().split('\n');
    const [first, last] = [lines.findIndex((line) => line.includes('beam object')), lines.findIndex((line) => line.includes('-> P1: 300'))];
    ok(found.range.start.line >= first && found.range.end.line <= last, `it stands on line ${found.range.start.line}, not on ${first} to ${last}`);
    ok(!found.range.isEmpty, 'it underlines nothing');
  });

  it('go when the leg is right, and come back', async () => {
    const page = await open(text);
    await mismatch(page);
    await type(page, '468 mm', '384 mm');
    await matched(page);
    await type(page, '384 mm', '468 mm');
    await mismatch(page);
  });

  it('stay in their line while a line is half typed', async () => {
    const page = await open(text);
    await mismatch(page);
    await type(page, '632.8 nm', '632.8');
    const line = page.getText().split('\n').findIndex((written) => written.includes('632.8'));
    await until(() => findings(page).some((found) => found.range.start.line === line), 'a finding on the line without a unit');
    const elsewhere = findings(page).filter((found) => found.range.start.line !== line && found.severity === vscode.DiagnosticSeverity.Error);
    equal(elsewhere.map(codeOf).join(), '', 'errors on other lines');
  });

  it('are those of the last text after a burst of typing', async () => {
    const page = await open(text);
    await mismatch(page);
    for (let mm = 468; mm > 384; mm -= 4) await type(page, `${mm} mm`, `${mm - 4} mm`);
    await matched(page);
    for (let mm = 384; mm < 468; mm += 4) await type(page, `${mm} mm`, `${mm + 4} mm`);
    const found = await until(() => findings(page, 'arms-mismatched').find(({ message }) => /\b84\b/.test(message)), 'the finding that says 84');
    equal(findings(page, 'arms-mismatched').length, 1, `number of findings like '${found.message}'`);
  });
});
