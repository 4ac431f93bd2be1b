/** All that is tried with many inputs, the cheap ones first. */
import type { Target } from './target.ts';
import { command } from './targets/command.ts';
import { features } from './targets/features.ts';
import { grammar } from './targets/grammar.ts';
import { messages } from './targets/messages.ts';
import { pages } from './targets/pages.ts';
import { protocol } from './targets/protocol.ts';
import { review } from './targets/review.ts';
import { slips } from './targets/slips.ts';

export const TARGETS: readonly Target[] = [grammar, messages, protocol, pages, features, slips, review, command];
