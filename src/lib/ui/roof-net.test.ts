import { describe, expect, it } from 'vitest';
import { type SlopeEdge, type SlopeInput, makeSlope } from '$lib/engine/roof';
import roofs from '../../../seeds/roofs.json';
import { type NetPoint, frameOfNet, roofNet } from './roof-net.ts';

function exampleNet(id: string): ReturnType<typeof roofNet> {
  const roof = roofs.roofs.find((one) => one.id === id);
  if (!roof) throw new Error(`no roof ${id}`);
  return roofNet((roof.slopes as SlopeInput[]).map(makeSlope));
}

const apart = (one: NetPoint, other: NetPoint): number =>
  Math.hypot(one.x - other.x, one.y - other.y);

/** Pairs of slopes that share an edge: two corners of the one lie on two of the other. */
function joins(net: ReturnType<typeof roofNet>): string[] {
  return net.flatMap((one, index) =>
    net.slice(index + 1).flatMap((other) => {
      const shared = one.corners.filter(
        (corner, at) =>
          other.corners.some((its) => apart(corner, its) < 60) &&
          !one.corners.slice(0, at).some((before) => apart(before, corner) < 60) // a hip end's top
      );
      return shared.length >= 2 ? [`${one.slopeId} ${other.slopeId}`] : [];
    })
  );
}

describe('roofNet', () => {
  it('joins the two slopes of a gable along the ridge, the back one upside down', () => {
    const [south, north] = exampleNet('gable');
    expect(joins([south, north])).toEqual(['south north']);
    expect(Math.abs(north.turnDegrees)).toBeCloseTo(180, 6);
    // its eave lies two rafters of 5500 mm above the other's
    expect(north.corners[0].y).toBeCloseTo(-11000, 6);
    expect(north.corners[0].x).toBeCloseTo(7900, 6);
  });

  it('joins a hipped roof all round: ridge to ridge, and a hip end on each side', () => {
    expect(joins(exampleNet('hipped')).toSorted()).toEqual([
      'front back',
      'front left',
      'front right'
    ]);
  });

  it('joins an L along its two ridges and its valley, or its hip', () => {
    const found = joins(exampleNet('l-with-valley'));
    expect(found).toContain('inner-south outer-north');
    expect(found).toContain('inner-west outer-east');
    expect(found).toContain('inner-south inner-west');
  });

  it('keeps the true size of every slope', () => {
    for (const { id, slopes } of roofs.roofs) {
      const net = exampleNet(id);
      for (const [index, { corners }] of net.entries())
        expect(apart(corners[0], corners[1])).toBeCloseTo(slopes[index].eaveWidthMm, 6);
    }
  });

  it('stands slopes that share no edge side by side, none on another', () => {
    const verge: SlopeEdge = { kind: 'verge', insetAtTopMm: 0 };
    const net = roofNet(
      [3000, 5000, 4000].map((eaveWidthMm, index) =>
        makeSlope({
          ...{ id: `s${index}`, rafterLengthMm: 2000, eaveWidthMm, pitchDegrees: 30 },
          ...{ left: verge, right: verge }
        })
      )
    );
    expect(joins(net)).toEqual([]);
    for (const [index, { corners }] of net.entries())
      if (index > 0) expect(corners[0].x).toBeGreaterThan(net[index - 1].corners[1].x);
  });

  it('lies in a box with a border round it', () => {
    const slope = makeSlope({ id: 'a', rafterLengthMm: 2000, eaveWidthMm: 3000, pitchDegrees: 30 });
    const { width, height, ...at } = frameOfNet(roofNet([slope]), 100);
    expect({ width, height }).toEqual({ width: 3200, height: 2200 });
    expect(at).toEqual({ left: -100, top: -2100 });
  });

  it('gives nothing for no slope', () => {
    expect(roofNet([])).toEqual([]);
  });
});
