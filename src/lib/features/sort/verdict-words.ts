import type { SampleStep } from '$lib/job';
import type { Catalogue, NumberWords, Piles } from '$lib/text';
import { type NoPallet, sayRefusal } from './refusal-words.ts';
import type { InputRefusal } from '$lib/app';
import type { Prompt, Told } from '$lib/app';

/** What the top of the screen says. */
export interface VerdictWords {
  tone: 'idle' | 'pile' | 'plain' | 'bad';
  pile: number | null;
  piles: Piles;
  thicknessMm?: number;
  title: string;
  detail: string;
  marks: { kind: 'borderline' | 'rogue' | 'differs'; title: string; why: string }[];
  choicesMm: readonly number[];
  status: string;
  isUnsaved: boolean;
}

export type SaveStatus = 'none' | 'saving' | 'saved' | 'not-saved';

/** What can be on the screen at once; a refusal goes before a prompt, and that before a verdict. */
export interface OnScreen {
  told: Told | undefined;
  prompt: Prompt | undefined;
  refusal: InputRefusal | NoPallet | undefined;
  saveStatus: SaveStatus;
  way: 'hand' | 'gauge';
  /** How far the sample before grades is; undefined once they are set. */
  sample?: SampleStep;
}

/** The words of the verdict. */
export function verdictWords(on: OnScreen, text: Catalogue, numbers: NumberWords): VerdictWords {
  const { sort } = text;
  const plain = (tone: VerdictWords['tone'], title: string, detail: string): VerdictWords => ({
    ...{ tone, pile: null, piles: 0, title, detail },
    ...{ marks: [], choicesMm: [], status: '', isUnsaved: false }
  });
  if (on.refusal) {
    const choicesMm = 'perhapsMm' in on.refusal ? on.refusal.perhapsMm : [];
    const sentence = sayRefusal(on.refusal, sort, numbers);
    return { ...plain('bad', sort.refused.title, sentence), choicesMm };
  }
  if (on.prompt) return promptWords(on.prompt, plain, text, numbers);
  if (!on.told) {
    const title = on.way === 'gauge' ? sort.ready.gauge : sort.ready.hand;
    return plain('idle', title, on.sample ? saySample(on.sample, sort) : '');
  }
  const isUnsaved = on.saveStatus === 'not-saved';
  const { saving, saved, notSaved } = sort.told;
  const status = isUnsaved ? notSaved : on.saveStatus === 'saving' ? saving : saved;
  const said = toldWords(on.told, plain, text, numbers);
  const isOfSample = on.told.kind === 'gauged' && on.told.judgement.pile === null;
  const detail =
    isOfSample && on.sample ? `${said.detail} ${saySample(on.sample, sort)}` : said.detail;
  return { ...said, detail, status, isUnsaved };
}

/** Where the sorter is in the sample, and what to take next: "A 20 of 20. Take pallet B." */
export function saySample(
  { label, done, of, next, isEnough }: SampleStep,
  { sample }: Pick<Catalogue['sort'], 'sample'>
): string {
  if (isEnough) return sample.enough;
  const count = sample.count(label, done, of);
  return next ? `${count} ${sample.take(next.label)}.` : count;
}

type Plain = (tone: VerdictWords['tone'], title: string, detail: string) => VerdictWords;

function promptWords(
  prompt: Prompt,
  plain: Plain,
  { sort: { told } }: Catalogue,
  numbers: NumberWords
): VerdictWords {
  const mm = (value: number) => numbers.mm(value, 2);
  switch (prompt.kind) {
    case 'point':
      return plain('plain', told.point(prompt.done, prompt.wanted), told.pointWhy);
    case 'side':
      return plain('plain', told.side[prompt.side], told.sideWhy);
    case 'again':
      return plain('plain', told.again, told.againWhy(mm(prompt.firstMm)));
    case 'moved':
      return plain('plain', told.moved, told.movedWhy(mm(prompt.firstMm), mm(prompt.secondMm)));
  }
}

function toldWords(
  told: Told,
  plain: Plain,
  { sort, common }: Catalogue,
  numbers: NumberWords
): VerdictWords {
  const from = sort.told.from(told.palletLabel);
  const titleOf = (pile: number, piles: Piles) =>
    common.pileWord(pile, piles) || common.pile(pile, piles);
  switch (told.kind) {
    case 'tapped': {
      const { pile, piles } = told;
      const words = plain('pile', titleOf(pile, piles), `${sort.told.byHand}, ${from}`);
      return { ...words, pile, piles };
    }
    case 'setAside':
      return plain('plain', sort.told.setAside, `${sort.setAside.reasons[told.reason]}, ${from}`);
    case 'checked': {
      const { felt, gauged, piles } = told;
      const why = sort.told.checkWhy(
        numbers.mm(told.thicknessMm, 2),
        common.pile(felt, piles),
        common.pile(gauged, piles)
      );
      const title = felt === gauged ? sort.told.checkAgrees : sort.told.checkDiffers;
      return plain('plain', title, why);
    }
    case 'undone':
      return plain('plain', sort.told.undone, told.what);
    case 'gauged':
      return gaugedWords(told, from, plain, { sort, common }, numbers);
  }
}

function gaugedWords(
  told: Extract<Told, { kind: 'gauged' }>,
  from: string,
  plain: Plain,
  { sort, common }: Pick<Catalogue, 'sort' | 'common'>,
  numbers: NumberWords
): VerdictWords {
  const { piles, thicknessMm, taperMm, points } = told;
  const { pile, borderlineMm, rogue } = told.judgement;
  const read = numbers.mm(thicknessMm, 2);
  const taper = points.length > 1 ? `, ${sort.told.taper(numbers.mm(taperMm, 2))}` : '';
  const marks: VerdictWords['marks'] = [];
  if (rogue) {
    const why =
      rogue.kind === 'beyond-spread'
        ? sort.told.beyondSpread(numbers.mm(rogue.overMm, 1))
        : sort.told.outsideOrder(
            `${numbers.decimal(rogue.band.lowMm, 1)}–${numbers.mm(rogue.band.highMm, 1)}`
          );
    const title = rogue.isTooThick ? sort.told.tooThick : sort.told.tooThin;
    marks.push({ kind: 'rogue', title, why });
  }
  if (borderlineMm !== null) {
    const why = sort.told.borderlineWhy(numbers.mm(borderlineMm, 2));
    marks.push({ kind: 'borderline', title: sort.told.borderline, why });
  }
  if (pile === null) {
    const words = plain('plain', `${sort.told.sample}: ${read}${taper}`, sort.told.sampleWhy);
    return { ...words, marks };
  }
  const title = common.pileWord(pile, piles) || common.pile(pile, piles);
  const words = plain(
    'pile',
    title,
    marks.length > 0 ? `${read}${taper}` : `${read}${taper}, ${from}`
  );
  return { ...words, pile, piles, thicknessMm, marks };
}
