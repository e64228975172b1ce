/**
 * A hub to be killed: appends parcels without end and says each number once it was answered.
 * Usage: node hub-killed.js PROGRAM FILE
 */
const [program, file] = process.argv.slice(2);
const { SqliteHubStore } = await import(program);
const store = new SqliteHubStore(file);
const [SPACE, MOST] = ['AAAAAAAAAAAAAAAAAAAAAA', 2 ** 31];
const keeper = { id: 'k', tokenHash: 'k', device: '', label: '' };
await store.openSpace(SPACE, keeper, 1);
const device = (/** @type {number} */ number) =>
  `018f0000-0000-7000-8000-${String(number).padStart(12, '0')}`;
const heads = await store.heads(SPACE);

await Promise.all(
  [1, 2, 3].map(async (writer) => {
    for (let number = (heads[device(writer)] ?? 0) + 1; ; number++) {
      const bytes = new Uint8Array(600).fill(number & 0xff);
      const parcel = { device: device(writer), first: number, last: number, bytes };
      const stored = await store.append(SPACE, parcel, MOST, number);
      if (!stored.ok) throw new Error(`refused ${number}`);
      process.stdout.write(`${writer} ${number}\n`);
    }
  })
);

export {};
