/** What the extension tells the editor of itself, and the words that it has in the language of its author. */
import { readFileSync } from 'node:fs';

interface Command { readonly command: string; readonly title: string; readonly category: string; readonly icon?: string | { readonly light: string; readonly dark: string }; readonly enablement?: string }
interface MenuItem { readonly command: string; readonly when?: string; readonly group?: string }
interface Step { readonly id: string; readonly title: string; readonly description: string; readonly media: { readonly svg: string; readonly altText: string }; readonly completionEvents: readonly string[] }
export interface Manifest {
  readonly name: string;
  readonly publisher: string;
  readonly activationEvents: readonly string[];
  readonly capabilities: { readonly untrustedWorkspaces: { readonly supported: unknown; readonly description?: string; readonly restrictedConfigurations?: readonly string[] }; readonly virtualWorkspaces: { readonly supported: unknown; readonly description?: string } };
  readonly contributes: {
    readonly commands: readonly Command[];
    readonly languages: readonly { readonly icon: { readonly light: string; readonly dark: string } }[];
    readonly menus: Readonly<Record<string, readonly MenuItem[]>>;
    readonly configuration: readonly { readonly id: string; readonly title: string; readonly order: number; readonly properties: Readonly<Record<string, { readonly type: string; readonly default: unknown; readonly scope?: string; readonly order: number; readonly markdownDescription: string }>> }[];
    readonly taskDefinitions: readonly { readonly type: string; readonly required: readonly string[]; readonly properties: Readonly<Record<string, { readonly enum?: readonly string[]; readonly enumDescriptions?: readonly string[]; readonly description: string }>> }[];
    readonly problemMatchers: readonly { readonly name: string; readonly applyTo: string; readonly pattern: Readonly<Record<'file' | 'line' | 'column' | 'severity' | 'message' | 'code', number>> & { readonly regexp: string } }[];
    readonly walkthroughs: readonly { readonly id: string; readonly title: string; readonly description: string; readonly steps: readonly Step[] }[];
  };
}

export const read = (file: string): string => readFileSync(new URL(`../../${file}`, import.meta.url), 'utf8');
/** Its words in a language, by the keys that stand for them. */
export const wordsIn = (language?: string): Readonly<Record<string, string>> => JSON.parse(read(`package.nls${language === undefined ? '' : `.${language}`}.json`)) as Record<string, string>;
/** As it is written, with keys. */
export const RAW = read('package.json');
const english = wordsIn();
/** As it is shown, in the words of the author. */
export const MANIFEST = JSON.parse(RAW, (_, value: unknown) => (typeof value === 'string' ? value.replace(/^%(.+)%$/, (key, name: string) => english[name] ?? key) : value)) as Manifest;
