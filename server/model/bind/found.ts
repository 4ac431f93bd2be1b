/** What is found in the file that a page names. */
import type { Inventory, Setup } from '../model.ts';

/** What a `use` or a master finds: inventories and setups of that file, or why there are none. `masterRing`: its masters lead back to it. */
export type Found = { readonly inventories: readonly Inventory[]; readonly setups: readonly Setup[]; readonly uri: string; readonly masterRing?: string } | { readonly code: string; readonly uri: string; readonly data: Readonly<Record<string, string>> };
