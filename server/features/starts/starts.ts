/** The pages to begin with: the usual layouts, each matched and without a finding, one with a slip to practise on, and an empty one. Editors and the command line show this one list. */
import { backLit } from './pages/back-lit.ts';
import { byString } from './pages/by-string.ts';
import { empty } from './pages/empty.ts';
import { keyAndFill } from './pages/key-and-fill.ts';
import { parallelReference } from './pages/parallel-reference.ts';
import { practice } from './pages/practice.ts';
import { rainbowTransfer } from './pages/rainbow-transfer.ts';
import { reflectionTransfer } from './pages/reflection-transfer.ts';
import { singleBeam } from './pages/single-beam.ts';
import { splitReflection } from './pages/split-reflection.ts';
import { transmission } from './pages/transmission.ts';
import type { Start } from './start.ts';

export type { Start } from './start.ts';

/** The simplest one first, the empty page last. */
export const STARTS: readonly Start[] = [byString, transmission, singleBeam, splitReflection, keyAndFill, backLit, parallelReference, reflectionTransfer, rainbowTransfer, practice, empty];

export const startOf = (name: string): Start | undefined => STARTS.find(s => s.name === name);
