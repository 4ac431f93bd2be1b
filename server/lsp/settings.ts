/** What the client's user has chosen. */
import { DidChangeConfigurationNotification, type ClientCapabilities, type Connection } from 'vscode-languageserver';
import { ALL_HINTS, type HintKinds } from '../features/hint-kinds.ts';
import { askToBeTold } from './ask-to-be-told.ts';

const SECTION = 'platewright.hints';
const LENSES = 'platewright.lenses';

/** Above what a line of figures is wanted. */
export interface Lenses { readonly setups: boolean; readonly arms: boolean }
const ALL_LENSES: Lenses = { setups: true, arms: true };

export class Settings {
  private hints: Promise<HintKinds> = Promise.resolve(ALL_HINTS);
  private above: Promise<Lenses> = Promise.resolve(ALL_LENSES);

  constructor(private readonly connection: Connection, private readonly can: () => ClientCapabilities) {}

  /** Which hints are wanted now. */
  wanted(): Promise<HintKinds> { return this.hints; }
  /** Which lines above the text are wanted now. */
  lenses(): Promise<Lenses> { return this.above; }

  /** Asks for the settings, and to be told of changes. `changed` is called behind each change. */
  begin(changed: () => void): void {
    const { workspace } = this.can();
    if (workspace?.configuration === true) this.ask();
    if (workspace?.didChangeConfiguration?.dynamicRegistration === true) askToBeTold(this.connection, DidChangeConfigurationNotification.type, { section: [SECTION, LENSES] });
    this.connection.onDidChangeConfiguration(params => {
      const told = (params as { settings?: { platewright?: { hints?: unknown; lenses?: unknown } | null } | null } | null)?.settings?.platewright;
      if (workspace?.configuration === true) this.ask();
      else [this.hints, this.above] = [Promise.resolve(chosen(told?.hints)), Promise.resolve(lensesIn(told?.lenses))];
      changed();
    });
  }

  private ask(): void {
    this.hints = this.connection.workspace.getConfiguration(SECTION).then(chosen, () => ALL_HINTS);
    if (this.can().textDocument?.codeLens) this.above = this.connection.workspace.getConfiguration(LENSES).then(lensesIn, () => ALL_LENSES);
  }
}

/** What is not said to be unwanted is shown. */
function wantedIn(settings: unknown): (kind: keyof HintKinds | keyof Lenses) => boolean {
  const said = (typeof settings === 'object' ? settings : null) as Record<string, unknown> | null;
  return kind => said?.[kind] !== false;
}

function lensesIn(settings: unknown): Lenses {
  const wants = wantedIn(settings);
  return { setups: wants('setups'), arms: wants('arms') };
}

function chosen(settings: unknown): HintKinds {
  const wants = wantedIn(settings);
  return { legLengths: wants('legLengths'), armTotals: wants('armTotals'), mismatch: wants('mismatch'), found: wants('found') };
}
