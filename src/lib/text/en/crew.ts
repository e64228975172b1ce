import { pluralizer } from '../plural.ts';

const many = pluralizer('en');
const PHOTOS = { one: 'photo', other: 'photos' };
const entries = (n: number): string => many(n, { one: 'entry', other: 'entries' });

/** How much a clock is off by, in words. */
function offBy(ms: number): string {
  const minutes = Math.round(ms / 60_000);
  if (minutes < 90) return many(minutes, { one: 'minute', other: 'minutes' });
  const hours = Math.round(minutes / 60);
  if (hours < 48) return many(hours, { one: 'hour', other: 'hours' });
  return many(Math.round(hours / 24), { one: 'day', other: 'days' });
}

/** The crew of a job: who is on it, and what has reached them. */
export const crew = {
  title: 'Crew',
  intro: 'One job on every device of the crew. Each goes on without signal.',
  /** In one line on every screen of a shared job. */
  strip: (notShared: number) =>
    notShared === 0 ? 'Shared with the crew' : `${entries(notShared)} not shared yet`,
  /** On Job, in place of what is not backed up. */
  safe: (notShared: number) =>
    `${notShared === 0 ? 'The crew has all your entries' : `${entries(notShared)} not with the crew yet`}. A backup file now and then is still wise.`,
  removedStrip: 'Not shared: removed from the crew',
  state: {
    shared: 'All your entries are with the crew.',
    waiting: (n: number) => `${entries(n)} not shared yet. They go out by themselves with signal.`,
    first: 'Looking for the hub…',
    'no-answer': 'No signal, or the hub is down. Work on: nothing is lost.',
    removed:
      'This device was removed from the crew. The job stays here, but nothing goes out any more. Ask for a new invitation.',
    'hub-full': 'The hub has no room left. Entries wait here; tell whoever runs it.',
    'device-full': 'This device has no room left. Free some space, then open the job again.',
    wait: 'The hub is busy. The app tries again in half a minute.',
    refused: 'The hub refused the entries. They wait here; load the newest version of the app.',
    'old-hub':
      'The hub is older than this app. Entries wait here; ask whoever runs it to bring it up to date.'
  },
  copiedStrip: 'Not shared: this phone was copied. See Crew',
  keepBoth: 'Keep both',
  keepBothHow: 'Keeps the entries of both, each once.',
  lastShared: (when: string) => `Last shared ${when}.`,
  alone: 'This job is on this device only.',
  noKey:
    'To start a crew, open the hub link on this device: whoever runs the hub has it. Without a hub, send the job by hand.',
  insecure:
    'Sharing needs an https address; this one is plain http. Saving works, and a job can be sent as a file.',
  name: 'Your name, as the crew sees it',
  needsName: 'Write a name, so that the others know who it is.',
  start: 'Start a crew for this job',
  people: 'Who is on this job',
  you: 'you',
  keeper: 'may invite',
  nameless: 'no name',
  heard: (when: string) => `last heard from ${when}`,
  neverHeard: 'not heard from yet',
  remove: 'Remove',
  removeWhom: (name: string) => `Remove ${name}`,
  removeSure: (name: string) =>
    `Remove ${name} from the crew? What he entered stays. His device keeps its copy.`,
  invite: 'Invite somebody',
  inviteKeeper: 'Invite somebody who may invite too',
  inviteHow:
    'Good for one person and seven days. Let him scan it, or send the link. Whoever has it can read the job.',
  qrAlt: 'The invitation as a QR code',
  copy: 'Copy the link',
  copied: 'Copied.',
  notCopied: 'Not copied: mark the link and copy it.',
  send: 'Send the link',
  open: 'Invitations not used yet',
  openUntil: (made: string, until: string) => `made ${made}, good until ${until}`,
  takeBack: 'Take back',
  takeBackSure: 'Take this invitation back? It lets nobody in any more.',
  fingerprint: {
    title: 'Compare fingerprints',
    how: 'Two devices that hold the same entries show the same signs. Wait until both are shared, then read yours to him.',
    show: 'Show the fingerprint',
    of: (n: number) => `of ${entries(n)}`
  },
  lock: 'Change the lock',
  lockHow:
    'Takes a new key for the job. Use it when a device was lost. Everybody else must be invited again. What was shared before stays on their devices.',
  lockSure: 'Change the lock? Everybody else must be invited again.',
  leave: 'Leave the crew',
  leaveHow: 'The job stays on this device. Nothing goes out or comes in any more.',
  leaveSure: 'Leave the crew? The job stays on this device.',
  sees: 'What the hub can see',
  seesWhat:
    'The hub keeps the entries sealed and cannot read them. It sees how large they are, when they come, from which address, and how many devices there are. Backups of the hub hold sealed entries too.',
  news: {
    sorted: (name: string, n: number, pallet: string) =>
      `${name || 'Crew'}: ${n} more sorted from pallet ${pallet}`,
    laidToo: (name: string, slope: string, course: number) =>
      `${name || 'Somebody'} entered ${slope}, course ${course} too: it counts once`
  },
  /** From hand to hand, without a hub. */
  mate: {
    title: 'Send to a mate',
    how: 'No hub or signal needed: as a file, or as codes that his camera reads off your screen.',
    code: 'His code, if he has the job already',
    codeHint: 'It stands on his Crew screen, under What I have. Empty sends all.',
    badCode: 'That is no code of this job. Ask him again, or leave it empty to send all.',
    scanCode: 'Scan his code',
    ready: (n: number, photos: number, bytes: number) =>
      `${entries(n)}${photos > 0 ? ` and ${many(photos, PHOTOS)}` : ''}, ${Math.max(1, Math.round(bytes / 1000)).toLocaleString('en')} kB.`,
    photosLeft: (n: number) =>
      `No room for ${many(n, { one: 'more photo', other: 'more photos' })}: back the job up and send that.`,
    nothing: 'He has all of it already.',
    send: 'Send the file',
    save: 'Save the file',
    show: 'Show as codes',
    tooMuch: 'Too much for codes. Send the file.',
    fileName: (job: string) => `${job}, for a mate`,
    sentence: 'To open it in the app: Jobs, Open a job sent to me.',
    codeAlt: 'A part of the job as a QR code',
    showing: (at: number, of: number) => `Code ${at} of ${of}`,
    showHow:
      'He opens Jobs, Scan or paste, and holds his camera over the codes until he has all. Photos are not in them.',
    stop: 'Stop',
    hold: 'Hold this code',
    next: 'Next code',
    have: 'What I have',
    haveHow: 'Let a mate scan this code, or read it to him. He then sends only what you lack.',
    ownCodeAlt: 'What this device has, as a QR code',
    open: 'Open what he sent'
  },
  scan: {
    start: 'Scan a code',
    looking: 'Hold the camera over the code.',
    stop: 'Stop scanning',
    progress: (seen: number, of: number) => `${seen} of ${of} codes read`,
    missing: (frames: readonly number[]) => `Missing: ${frames.join(', ')}`,
    faults: {
      insecure:
        'The camera needs an https address; this one is plain http. Paste the text or open the file.',
      'no-camera': 'No camera found. Paste the text or open the file.',
      'no-leave':
        'The camera is not allowed. Allow it for this site in the browser, or paste the text.'
    }
  },
  warnings: {
    held: (name: string) =>
      `Entries of ${name} do not fit and wait. The job is as it was; compare fingerprints with him.`,
    copied: 'This phone was copied: the hub has other entries under its number.',
    copiedMate: (name: string) =>
      `The device of ${name} was copied: the hub has other entries under its number.`,
    'put-back': 'The hub was put back from an old copy. The app sends again what it lost.',
    withheld: (name: string) =>
      `The hub gives less of ${name} than others saw. Ask whoever runs it; compare fingerprints.`,
    clock: (aheadMs: number) =>
      `The clock of this device is ${offBy(Math.abs(aheadMs))} ${aheadMs > 0 ? 'ahead of' : 'behind'} the hub’s. Set it: entries carry its time.`
  },
  faults: {
    'no-answer': 'The hub does not answer. Look at the signal and the address, then try again.',
    'not-let-in': 'The hub does not know this key. Ask whoever runs it for a new link.',
    removed: 'This device was removed from the crew. Ask for a new invitation.',
    'keeper-only': 'Only whoever may invite can do that.',
    'last-keeper': 'This is the last one who may invite. Invite another first.',
    'too-many': 'Too many tries in a minute. Wait a minute, then try again.',
    full: 'The hub has no room left. Tell whoever runs it.',
    used: 'This invitation was used already. Each is good for one person: ask for another.',
    expired: 'This invitation is older than seven days. Ask for another.',
    revoked: 'This invitation was taken back. Ask for another.',
    'unknown-invitation': 'The hub does not know this invitation. Ask for another.',
    'other-version': 'Hub and app do not fit each other. Load the newest version of the app.',
    'old-hub': 'The hub is older than this app. Ask whoever runs it to bring it up to date.',
    failed: 'The hub could not do it. Try again; tell whoever runs it if it stays so.',
    'not-an-invitation': 'That is no invitation and no job. Paste all that you were sent.',
    'other-site': 'This invitation is for another address. Open its link in the browser.',
    insecure: 'Joining needs an https address; this one is plain http. Ask for the job as a file.',
    cut: 'Some of the link is missing. Copy it whole, or scan it.',
    'too-new': 'The link is of a newer version. Load the newest version of the app first.',
    'no-job': 'Nobody of the crew has put the job there yet. Try again in a minute.',
    'nothing-yet': 'You are let in, but the job is not there yet. Try again in a minute.'
  },
  join: {
    title: 'Join a job',
    how: 'Scan the code on a mate’s screen, or paste what he sent: an invitation or a job.',
    paste: 'What you were sent',
    read: 'Open it',
    found: 'You are invited to a job. It comes to this device and stays shared.',
    join: 'Join',
    working: 'Fetching the job…',
    keyKept: 'This device can start crews now. Open a job, then Crew.',
    toJobs: 'To the jobs'
  }
};
