/** The words beside an item, in Markdown: from the vocabulary, and from what is computed. */
import type { Snapshot } from '../../analysis.ts';
import { findCheck } from '../../checks/registry.ts';
import { factIndex, factsOf, kindNamed, PROCESS_FACTS, SETUP_FACTS, SHOT_FACTS } from '../../model/things/index.ts';
import { resultNamed } from '../../results/names.ts';
import type { Topic } from './item.ts';
import { figureWords } from '../hover/chain.ts';
import { beamWordsOf, thingWords } from '../hover/figures.ts';
import { factWords, kindWords, unitWords } from '../hover/vocabulary.ts';
import { blocks, strong } from '../markdown.ts';

export function completionWords(topic: Topic, snapshot: Snapshot): string | undefined {
  switch (topic.of) {
    case 'kind': { const kind = kindNamed(topic.word); return kind && kindWords(kind); }
    case 'fact': {
      const kind = kindNamed(topic.owner);
      const facts = kind ? factsOf(kind) : { setup: SETUP_FACTS, shot: SHOT_FACTS, process: PROCESS_FACTS }[topic.owner];
      const fact = facts && factIndex(facts).get(topic.phrase);
      return fact && factWords(fact);
    }
    case 'unit': return unitWords(topic.unit);
    case 'check': { const check = findCheck(topic.code); return check && blocks(`${strong(topic.code)}: ${check.title}`, check.page); }
    case 'item': {
      const dot = topic.name.indexOf('.');
      const item = snapshot.model.visible.get(topic.name.slice(0, dot))?.things.get(topic.name.slice(dot + 1));
      return item && thingWords(item, undefined);
    }
    case 'thing': case 'beam': case 'result': {
      const r = snapshot.results.find(x => x.setup.node.at === topic.setup);
      if (!r) return undefined;
      if (topic.of === 'result') { const cell = resultNamed(r.graph, r.aliases, topic.name); return cell && figureWords(r.graph, cell); }
      const added = r.setup.variants.flatMap(v => v.changes).flatMap(c => (c.kind === 'thing' ? [c.thing] : []));
      const thing = topic.of === 'thing' ? r.setup.things.get(topic.name) ?? added.find(t => t.id === topic.name) : undefined;
      const beam = topic.of === 'beam' ? r.setup.beams.get(topic.name) : undefined;
      return thing ? thingWords(thing, r) : beam && beamWordsOf(beam, r);
    }
  }
}
