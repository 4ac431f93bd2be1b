/** Asks for readings at the top of the window, and offers losses where the powers that were read tell any. */
import { commands, l10n, QuickPickItemKind, window, type Disposable, type QuickPickItem, type TextDocument } from 'vscode';
import type { BaseLanguageClient } from 'vscode-languageclient';
import { ENTER, LOSSES, READINGS, type LossesAnswer, type ReadingsAnswer } from '../../server/lsp/protocol.ts';
import { ask } from '../ask.ts';
import { pageAtHand, sayNoPage } from '../page.ts';
import { writeInto } from '../plan/write.ts';
import { askIn } from './box.ts';
import { addTo, pageOf, sayUnsaved } from './paper.ts';
import { enterReadings, expectedWords, type Entered, type Reading } from './readings-asked.ts';
import { dayOf, minuteOf } from '../../server/lsp/stamp.ts';

const GROUPS: Readonly<Record<Reading['group'], string>> = { legs: l10n.t('legs, by string'), sums: l10n.t('whole paths, by string'), paths: l10n.t('one path held against the other'), light: l10n.t('light, by meter'), wheels: l10n.t('wheels'), powers: l10n.t('power along the beams: tells what is lost') };

export class Readings {
  private readonly own: readonly Disposable[];

  constructor(private readonly client: BaseLanguageClient) {
    this.own = [commands.registerCommand('platewright.enterReadings', () => this.enter()), commands.registerCommand('platewright.findLosses', () => this.losses())];
  }

  dispose(): void { for (const d of this.own) d.dispose(); }

  private async enter(): Promise<void> {
    const editor = pageAtHand();
    if (!editor) sayNoPage();
    if (!editor || !this.client.isRunning()) return;
    const { document } = editor;
    let where: object = { line: editor.selection.active.line };
    await enterReadings({
      list: async () => {
        const answer = await ask<ReadingsAnswer>(this.client, READINGS, { ...pageOf(this.client, document), ...where, day: dayOf(new Date()) }, 'What there is to read');
        if (answer === 'none') return null;
        if (typeof answer === 'string') return undefined;
        // From then on lines are added, and the cursor is no guide any more.
        where = { setup: answer.setup };
        return answer;
      },
      choose, ask: question => askIn({ ...question, back: true, list: l10n.t('Choose What to Read') }),
      enter: (setup, subject, value) => addTo<Entered>(this.client, document, ENTER, () => ({ setup, subject, value, on: minuteOf(new Date()) }), 'A reading'),
      unsaved: line => { void sayUnsaved(document, line); },
      say: (words, kind) => { void (kind === 'note' ? window.showInformationMessage(words) : window.showWarningMessage(words)); },
      done: (written, disagree, losses) => { void this.done(written, disagree, losses, document); },
    });
  }

  private async done(written: number, disagree: readonly string[], losses: boolean, document: TextDocument): Promise<void> {
    const count = written === 1 ? l10n.t('One reading is written.') : l10n.t('{0} readings are written.', written);
    const worth = disagree.length === 0 ? l10n.t('None disagrees with what was planned.') : disagree.length === 1 ? l10n.t('One is worth a look; the list of problems has what comes of it.') : l10n.t('{0} are worth a look; the list of problems has what comes of them.', disagree.length);
    const words = `${count} ${worth}`;
    const find = l10n.t('Find Losses');
    if (await window.showInformationMessage(words, ...(losses ? [find] : [])) === find) await this.losses(document);
  }

  /** What the powers tell of losses: each is written when it is chosen, and none else. */
  private async losses(of?: TextDocument): Promise<void> {
    const editor = window.activeTextEditor;
    const document = of ?? editor?.document;
    if (document?.languageId !== 'plate' || !this.client.isRunning()) return;
    const line = editor?.document === document ? editor.selection.active.line : 0;
    const answer = await ask<LossesAnswer>(this.client, LOSSES, { ...pageOf(this.client, document), line }, 'Losses');
    if (typeof answer === 'string') { void window.showWarningMessage(answer === 'none' ? l10n.t('There is no setup on the page.') : l10n.t('The losses could not be told, or the page has changed in the meantime. Ask for them again.')); return; }
    if (answer.losses.length === 0) { void window.showInformationMessage(answer.open.join(' ')); return; }
    const rows = answer.losses.map(l => ({ label: l.words, description: l.detail, edits: l.edits, picked: false }));
    const chosen = await window.showQuickPick(rows, { title: l10n.t('What the powers of “{0}” tell: choose what is written in', answer.setup), placeHolder: answer.open.length === 0 ? l10n.t('By least squares over all powers that were read') : answer.open.join(' '), canPickMany: true, matchOnDescription: true });
    const edits = chosen?.flatMap(c => c.edits) ?? [];
    if (edits.length === 0) return;
    if (document.version !== answer.version) { void window.showWarningMessage(l10n.t('The text has changed meanwhile, so nothing was written.')); return; }
    if (!(await writeInto(document).write(edits))) void window.showWarningMessage(l10n.t('The editor did not take the change, so nothing was written.'));
  }
}

interface Row extends QuickPickItem { readonly at: number }

const separator = (label: string): Row => ({ at: -1, label, kind: QuickPickItemKind.Separator });

/** All that there is to read, in the order in which it is set up. */
function choose(readings: readonly Reading[], first: number): Promise<number | undefined> {
  const pick = window.createQuickPick<Row>();
  pick.title = l10n.t('Enter readings: where to begin');
  pick.placeholder = l10n.t('Enter begins there and goes on from one to the next');
  pick.matchOnDescription = true;
  pick.items = readings.flatMap((r, at) => [
    ...(readings[at - 1]?.group === r.group ? [] : [separator(GROUPS[r.group])]),
    { at, label: `${r.today ? '$(check) ' : ''}${r.what}`, description: [expectedWords(r), r.read === undefined ? '' : l10n.t('read: {0}', r.read)].filter(w => w !== '').join(' · ') },
  ]);
  pick.activeItems = pick.items.filter(i => i.at === first);
  return new Promise(resolve => {
    pick.onDidAccept(() => { resolve(pick.activeItems[0]?.at); pick.hide(); });
    pick.onDidHide(() => { resolve(undefined); pick.dispose(); });
    pick.show();
  });
}
