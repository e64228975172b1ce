import { describe, expect, it } from 'vitest';
import { jobFilesIn } from './job-bundle.ts';

const jobId = (at: number) => `018f0000-0000-7000-8000-00000000000${at}`;
const header = (at: number, events: number, photos: number) =>
  `${JSON.stringify({
    format: 'evencourse-job',
    version: 1,
    jobId: jobId(at),
    name: 'Barn',
    events,
    sha256: '0'.repeat(64),
    devices: { [jobId(9)]: events },
    photos
  })}\n`;

const textsIn = async (text: string) =>
  Promise.all((await jobFilesIn(new Blob([text]))).map((file) => file.text()));

describe('jobFilesIn', () => {
  it('parts a file of several jobs at their headers', async () => {
    const files = [
      `${header(1, 2, 0)}a\nb\n`,
      `${header(2, 1, 1)}c\nphoto\n`,
      `${header(3, 1, 0)}é\n`
    ];
    expect(await textsIn(files.join(''))).toEqual(files);
    expect(await textsIn(files[0])).toEqual([files[0]]);
  });

  it('leaves what is no row of whole job files of several jobs in one piece', async () => {
    const good = `${header(1, 1, 0)}a\n`;
    for (const text of [
      '',
      'x\ny\n',
      '{}\n',
      `${header(1, 3, 0)}a\n`,
      header(1, 1, 0),
      `${good}more\n`,
      `${good}${header(2, 2, 0)}cut off`,
      `${good}${good}`,
      `${good}{"events":1,"photos":0}\na\n`
    ])
      expect(await textsIn(text)).toEqual([text]);
  });

  it('reads jobs of several megabytes, whose lines end between two pieces', async () => {
    const large = `${header(1, 3, 0)}${'a'.repeat(2 ** 20 + 7)}\n${'b'.repeat(2 ** 21)}\nc\n`;
    const small = `${header(2, 1, 0)}d\n`;
    expect(await textsIn(large + small)).toEqual([large, small]);
  });
});
