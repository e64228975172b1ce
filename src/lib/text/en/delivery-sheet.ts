import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const AND = new Intl.ListFormat('en', { type: 'conjunction' });
const SLATE = { one: 'slate', other: 'slates' };

/** Words of the sheet for the supplier. */
export const sheet = {
  title: 'Delivery sheet',
  job: 'Job',
  print: 'Print, or keep as PDF',
  csv: 'All readings for a spreadsheet',
  supplier: 'Supplier',
  arrived: 'Arrived',
  order: 'Order',
  method: 'Method',
  methodText: (n: string, pallets: string, moment: string) =>
    `${n} drawn by chance from ${pallets}, before sorting, on ${moment}; each pallet by its share, each slate with the same chance, none twice.`,
  measuredText: (first: string, last: string) => `Measured from ${first} to ${last}.`,
  thicknessText:
    'A slate’s thickness is the average of its points, in the tail third, away from the dressed edge.',
  layersAlike: (slates: number, worth: number) =>
    `Slates of one layer are more alike than slates of different layers: of thickness these ${slates} tell as much as about ${worth} picked one by one.`,
  layersAdvice: 'To be surer, draw another list one by one, anywhere on the pallet.',
  lists: (n: number) => `${n} lists were drawn; all their slates count.`,
  readings: 'Every reading that counts (pallet/layer/slate, millimetres)',
  readingColumns: {
    place: 'Place',
    thickness: 'Thickness',
    points: 'Points',
    size: 'Length × width',
    square: 'Square',
    edge: 'Edge',
    flat: 'Flat',
    ring: 'Ring',
    defects: 'Defects'
  },
  photos: 'Photos',
  notes: 'Notes',
  noPhotos: 'No photos.',
  missing: 'Before you send it: still missing',
  missingNone: 'Nothing.',
  missingItems: {
    label: 'No packed thickness of 100 slates from the label.',
    stack: 'No stack measured.',
    photos: 'No photos.',
    places: (n: number) =>
      `${many(n, { one: 'place of the list is', other: 'places of the list are' })} not measured.`,
    check: (check: string, n: string, of: string) => `${check}: measured on ${n} of ${of}.`,
    checkAsked: (check: string, n: string, of: string) =>
      `${check}: measured on ${n} of the ${of} asked.`,
    tolerance: 'No tolerance of thickness is agreed.',
    agreed: 'No other limit is confirmed from the order or contract: they can only query.',
    arrival: 'No arrival date or days to claim.',
    papers: (papers: readonly string[]) => `Not entered: ${AND.format(papers)}.`,
    stale: 'Order, pallets or readings changed after signing: sign again.',
    unsigned: 'No verdict is signed.',
    roof: 'No roof is entered: the third finding says nothing of it.'
  },
  signature: 'Signature',
  unsigned: 'Not signed yet.',
  handSigned: 'Name, date, signature',
  hash: 'Fingerprint of the journal (SHA-256)',
  hashOf: (n: number) => `of the first ${many(n, { one: 'entry', other: 'entries' })}`,
  hashHow: (n: number) =>
    `It covers lines 2 to ${n + 1} of the job file, each to the end of its line. To check it, copy these lines, unchanged, into a file of their own. Any program that works out SHA-256 must give this number for it.`,
  hashLater: (n: number) =>
    `${many(n, { one: 'entry was', other: 'entries were' })} made after signing and are not part of what was signed.`,
  message: 'Message to the supplier',
  copy: 'Copy the message',
  copied: 'Copied.',
  copyFailed: 'The browser did not copy it: select the text and copy it by hand.',
  messageText: {
    order: (number: string) => `order ${number}`,
    deliveryNote: (number: string) => `delivery note ${number}`,
    arrived: (day: string) => `arrived ${day}`,
    start: (job: string, papers: readonly string[]) =>
      [`Delivery for “${job}”`, ...papers].join(', ') + '.',
    sample: (n: number) => `We measured ${many(n, SLATE)} drawn by chance before sorting.`,
    line: (fault: string) => `– ${fault}`,
    take: 'We take the delivery.',
    query: 'We query the delivery and hold it unfixed until you answer.',
    queryUnfinished: 'We hold the delivery unfixed until our sample is finished.',
    refuse: 'We refuse the delivery and hold it unfixed.',
    otherwise: {
      take: 'We take it all the same',
      query: 'We query it instead and hold it unfixed until you answer',
      refuse: 'We refuse it instead and hold it unfixed'
    },
    /** The same where courses are laid, whose slates are fixed. */
    laid: {
      query: 'We query the delivery and lay no more of it until you answer.',
      queryUnfinished: 'We lay no more of the delivery until our sample is finished.',
      refuse: 'We refuse the slates not laid.',
      otherwise: {
        query: 'We query it instead and lay no more of it until you answer',
        refuse: 'We refuse instead the slates not laid'
      }
    },
    because: (answer: string, reason: string) =>
      reason ? `${answer}, because: ${reason}` : `${answer}.`,
    end: 'The claim with method and readings is attached.',
    endWithPhotos: 'The claim with method, readings and photos is attached.',
    hash: (sha: string) => `Journal fingerprint ${sha}`
  }
};

/** Words of deliveries side by side. */
export const compare = {
  title: 'Deliveries compared',
  lead: 'All deliveries on this device whose sample is measured to the end of its list. Nothing leaves the device.',
  none: 'No delivery with a finished sample is on this device yet.',
  loading: (done: string, of: string) => `Opening job ${done} of ${of}…`,
  failed: (name: string) => `The job ${name} did not open and is left out.`,
  counts: (outside: string, sampled: string) => `${outside} of ${sampled} slates outside`,
  even: (best: string, other: string, isMoreEven: boolean) =>
    isMoreEven
      ? `It is also the more even: usual variation ${best} against ${other}.`
      : `Its slates are no more even: usual variation ${best} against ${other}.`,
  better: (best: string, counts: string, other: string, others: string, even: string) =>
    `${best} is better than ${other}: ${counts} against ${others}, more than chance explains. ${even}`,
  notTold: (best: string, counts: string, other: string, others: string, even: string) =>
    `${best} looks better than ${other}, but chance may explain it: ${counts} against ${others}. ${even}`,
  alike: (best: string, counts: string, other: string, others: string, even: string) =>
    `${best} and ${other} have as many outside: ${counts}, and ${others}. ${even}`,
  overTime: 'Over time',
  bySupplier: 'By supplier',
  noSupplier: 'no nickname',
  noDate: 'no date',
  columns: {
    job: 'Job',
    supplier: 'Supplier',
    arrived: 'Arrived',
    sampled: 'Sampled',
    mean: 'Average',
    sd: 'Usual variation',
    outside: 'Outside',
    aside: 'Set aside',
    kickers: 'Joints that will show, in 100, sorted',
    deliveries: 'Deliveries'
  },
  picture: 'Average and usual variation of each delivery',
  pictureText: (n: number) =>
    `${many(n, { one: 'delivery', other: 'deliveries' })} in order of arrival: the mark is the average, the bar the usual variation either way.`,
  spreadHint:
    'From the sample alone. Usual variation: how far slates lie from the average (standard deviation).',
  kickersHint:
    'Joints that will show, sorted into the piles of each job: expected from its sample alone, if every slate lies on its right pile.',
  outsideHint:
    'Outside: by a limit of the order, or by one to ask about. In brackets: the share of what the supplier makes, with 95 % confidence (Clopper-Pearson interval).',
  palletsOf: (job: string) => `Pallet averages of ${job}`,
  unknown: 'unknown'
};
