import { pluralizer } from '../plural.ts';

const many = pluralizer('en');

/** What a slope is checked for, and the cautions. */
export const checks = {
  title: 'Checks',
  good: 'All within the published and usual limits.',
  warning: 'Look at this',
  note: 'Note',
  /** For a first look: what and by how much. */
  short: {
    'headlap-above-third': (value: string, limit: string) =>
      `headlap ${value}, over a third of the slate (${limit})`,
    'headlap-below-least': (value: string, limit: string) =>
      `headlap ${value}, none below ${limit} is accepted`,
    'headlap-below-hint': (value: string, limit: string) =>
      `headlap ${value}, guides ask for ${limit} at this pitch`,
    'pitch-below-least': (value: string, limit: string) =>
      `pitch ${value}, double-lap slate wants ${limit}`,
    'side-lap-below-headlap': (value: string, limit: string) =>
      `side lap ${value}, less than the headlap of ${limit}`,
    'cuts-without-nail': (_value: string, _limit: string, pieces: number) =>
      `${many(pieces, { one: 'cut piece has', other: 'cut pieces have' })} no room for a nail`,
    'narrow-cuts': (_value: string, limit: string, pieces: number) =>
      `${many(pieces, { one: 'cut piece is', other: 'cut pieces are' })} narrower than ${limit}`,
    'bond-not-whole': (_value: string, limit: string) =>
      `a cut ends each course; over ${limit} none would`
  },
  standing: {
    'nhbc-7-2-19': 'NHBC Standards 7.2.19, table 12',
    'bs-5534-as-reported': 'British code 2014, as trade guides report it',
    'trade-guides-moderate-exposure': 'trade guides that agree, moderate exposure only',
    'common-practice': 'common practice, no source'
  },
  found: {
    'headlap-above-third': (value: string, limit: string) =>
      `Equal courses give a headlap of ${value}, above a third of the slate, ${limit}.`,
    'headlap-below-least': (value: string, limit: string) =>
      `The headlap is ${value}; none should be below ${limit}.`,
    'headlap-below-hint': (value: string, limit: string) =>
      `The headlap is ${value}; guides for moderate exposure ask for ${limit} at this pitch.`,
    'pitch-below-least': (value: string, limit: string) =>
      `The pitch is ${value}; double-lap slate wants at least ${limit}.`,
    'side-lap-below-headlap': (value: string, limit: string) =>
      `The least side lap is ${value}, below the headlap of ${limit}.`,
    'cuts-without-nail': (_value: string, limit: string, pieces: number) =>
      `${many(pieces, { one: 'cut piece leaves', other: 'cut pieces leave' })} no room for a nail hole with ${limit} of slate round it, at a hip, a valley or an opening. Cut from a slate-and-a-half or wider where it then takes its nail; else bond or hook it, as licensed practice allows.`,
    'narrow-cuts': (value: string, limit: string, pieces: number) =>
      `${many(pieces, { one: 'cut piece is', other: 'cut pieces are' })} narrower than ${limit}; the narrowest is ${value}.`,
    'bond-not-whole': (value: string, limit: string) =>
      `No joint within its range lets both bonds finish whole over ${value}; a piece is cut at the far end. Over ${limit} they would.`
  },
  decides:
    'These checks only inform you. Local code, exposure of the site and licensed practice decide.',
  cautions: {
    'local-code-decides': 'Least headlap and pitch come from the local code and the exposure.',
    'work-at-height': 'Work at height only from a proper scaffold and roof ladders.',
    lifting: 'Slates are heavy: load out in small stacks, spread over the roof, lifted with help.',
    'silica-dust': 'Cutting and holing free silica dust: wet it or extract it, and wear a mask.'
  }
};
