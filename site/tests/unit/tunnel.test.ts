import { describe, expect, test, vi } from 'vitest';
import { heightAt, placeNames, type Named } from '../../src/chart/beside';
import { roundSpan, roundTicks } from '../../src/chart/ticks';
import { eventsOf, readAt, tunnelPicture, valueAt, type TunnelPicture } from '../../src/chart/tunnel';
import { drawTunnel } from '../../src/chart/tunnelDrawing';
import type { Curves, Stage } from '../../src/generated/contract';
import { mark, tunnel } from '../fixtures/result';

// Words are measured on a canvas; where there is none their width is estimated.
vi.stubGlobal('document', { createElement: () => ({ getContext: () => null }) });

/** The invented route passes 6 m from 250 s to 800 s, 4 m of them until 600 s: not at one speed. */
const picture = tunnelPicture(tunnel) as TunnelPicture;
const flat = { ...tunnel, curves: { ...tunnel.curves, mean_conversion: tunnel.curves.time_s.map(() => 0) } };

describe('the tunnel picture', () => {
  test('is there for routes with zones of a length alone', () => {
    expect(picture.zones.map((z) => [z.number, z.name, z.kind, z.from, z.to])).toEqual([
      [1, 'Drying zone', 'heated', 0, 4],
      [2, 'Cooling zone', 'cooling', 4, 6],
    ]);
    expect([picture.length, picture.entered, picture.passing]).toEqual([6, 250, 550]);
    const stages = tunnel.stages.map((s): Stage => ({ ...s, position_m: null, length_m: null }));
    expect(tunnelPicture({ ...tunnel, stages })).toBeNull();
  });

  test('tells a zone that shines from one of hot air, where the answer says so', () => {
    const stages = tunnel.stages.map((s) => ({ ...s, infrared: s.kind === 'heated' }));
    expect(tunnelPicture({ ...tunnel, stages })?.zones.map((z) => z.kind)).toEqual(['infrared', 'cooling']);
  });

  test('gives each zone the air at its middle', () => {
    const curves: Curves = {
      ...tunnel.curves,
      time_s: [0, 250, 250, 600, 600, 800, 800, 3600],
      air_temperature_K: [293, 293, 373, 373, 295, 295, 293, 293],
      air_humidity_ratio_kg_per_kg: [0.01, 0.01, 0.03, 0.03, 0.02, 0.02, 0.01, 0.01],
    };
    const zones = tunnelPicture({ ...tunnel, curves })?.zones ?? [];
    expect(zones.map((z) => [z.temperature, z.humidity])).toEqual([
      [373, 0.03],
      [295, 0.02],
    ]);
  });

  test('places and times belong to each other', () => {
    for (const at of [0, 1, 4, 5.5, 6]) {
      const reading = readAt(picture, at);
      expect(reading.position).toBe(at);
      expect(reading.inside).toBeCloseTo(reading.after - 250, 10);
    }
    expect([picture.timeAt(0), picture.timeAt(4), picture.timeAt(6)]).toEqual([250, 600, 800]);
    expect(picture.positions[0]).toBe(0);
    expect(picture.positions.at(-1)).toBe(6);
    expect([...picture.positions].sort((a, b) => a - b)).toEqual(picture.positions);
  });

  test('reads the histories between their points, beyond the ends nothing', () => {
    // Film from 293.15 K to 313.15 K over the nine points; 480 s is the sixth, 240 s the fifth.
    expect(valueAt(tunnel.curves, 'film_temperature_K', 360, 'after')).toBeCloseTo(
      293.15 + 20 * (4.5 / 8),
      10,
    );
    expect(readAt(picture, -1).position).toBe(0);
    expect(readAt(picture, 99).position).toBe(6);
    expect(readAt(picture, 99).zone?.name).toBe('Cooling zone');
  });

  test('where the air jumps it reads what comes, and at the exit what was', () => {
    const curves: Curves = {
      ...tunnel.curves,
      time_s: [0, 250, 250, 600, 600, 800, 800, 3600],
      air_temperature_K: [293.15, 293.15, 373.15, 373.15, 295.15, 295.15, 293.15, 293.15],
    };
    const jumping = tunnelPicture({ ...tunnel, curves }) as TunnelPicture;
    expect([0, 3.999, 4, 6].map((at) => Math.round(readAt(jumping, at).temperatures[0] ?? NaN))).toEqual([
      100, 100, 22, 22,
    ]);
    expect(jumping.positions).toEqual([0, 4, 4, 6]);
    expect(jumping.temperatures[0]?.values.map(Math.round)).toEqual([100, 100, 22, 22]);
  });

  test('marks inside stand at their place, the others are told apart', () => {
    expect(picture.marks.map((m) => [m.name, m.at])).toEqual([
      ['touch', (4 * 50) / 350],
      ['dry_through', (4 * 100) / 350],
      ['tack_free', (4 * 150) / 350],
      ['cured', 5],
    ]);
    expect(picture.after.map((m) => m.label)).toEqual(['cool']);
    const marks = [mark('touch', 100), mark('cured', null), mark('cool', 0)];
    const other = tunnelPicture({ ...tunnel, marks }) as TunnelPicture;
    expect(other.before.map((m) => m.label)).toEqual(['touch']);
    expect(other.never).toEqual(['cured']);
    expect(other.marks).toEqual([]);
  });

  test('the table tells zones, marks and exit in their order', () => {
    expect(eventsOf(picture).map((e) => e.event)).toEqual([
      'enters Drying zone',
      'touch',
      'dry through',
      'tack free',
      'enters Cooling zone',
      'cured',
      'exit',
    ]);
  });
});

describe('the drawing of the tunnel', () => {
  const wide = drawTunnel(picture, 900);
  const narrow = drawTunnel(picture, 330);

  test('draws the zones to scale on the axis of the strips', () => {
    for (const drawn of [wide, narrow]) {
      const [dry, cool] = drawn.zones;
      expect((dry?.width ?? 0) / (cool?.width ?? 1)).toBeCloseTo(2, 10);
      expect(dry?.x).toBe(drawn.left);
      expect((cool?.x ?? 0) + (cool?.width ?? 0)).toBeCloseTo(drawn.right, 10);
      for (const strip of drawn.strips) {
        for (const line of strip.lines) {
          expect(line.points[0]?.x).toBe(drawn.left);
          expect(line.points.at(-1)?.x).toBeCloseTo(drawn.right, 10);
          for (const p of line.points) {
            expect(p.y).toBeGreaterThanOrEqual(strip.top - 1e-9);
            expect(p.y).toBeLessThanOrEqual(strip.bottom + 1e-9);
          }
        }
      }
      for (const at of [0, 1.5, 6]) expect(drawn.position(drawn.x(at))).toBeCloseTo(at, 10);
      expect([drawn.position(-50), drawn.position(9999)]).toEqual([0, 6]);
    }
  });

  test('says in a zone what fits, else its number', () => {
    // At 425 s, between 240 s and 480 s of a ramp over 100 K in eight steps.
    expect(wide.zones[0]?.words).toEqual(['Drying zone', 'heated', '79.6 °C', '10 g/kg']);
    expect(narrow.zones.map((z) => z.words)).toEqual([['1'], ['2']]);
  });

  test('minutes and metres are round and lie inside', () => {
    expect(wide.metres.map((t) => t.words)).toEqual([
      '0',
      '0.5',
      '1',
      '1.5',
      '2',
      '2.5',
      '3',
      '3.5',
      '4',
      '4.5',
      '5',
      '5.5',
      '6',
    ]);
    expect(wide.minutes.at(-1)?.words).toBe('9');
    for (const tick of [...wide.minutes, ...narrow.minutes]) expect(tick.at).toBeGreaterThanOrEqual(46);
    expect(wide.minutes.every((t) => t.at <= wide.right + 1e-9)).toBe(true);
  });

  test('minutes stand where the part then is', () => {
    // 5 min after the entry the part has passed 300 of 350 s of the first zone.
    const five = wide.minutes.find((t) => t.words === '5');
    expect(five?.at).toBeCloseTo(wide.x((4 * 300) / 350), 10);
  });

  test('has an axis of conversion only where something crosslinks', () => {
    expect(wide.strips[1]?.rightTicks.map((t) => t.words)).toEqual(['0', '50', '100']);
    const dry = drawTunnel(tunnelPicture(flat) as TunnelPicture, 900);
    expect(dry.strips[1]?.rightTicks).toEqual([]);
    expect(dry.strips[1]?.lines.map((l) => l.name)).toEqual(['mean', 'outer 5 %']);
    expect(dry.right).toBeGreaterThan(wide.right);
  });
});

describe('names beside lines', () => {
  const frame = { left: 0, right: 600, top: 0, bottom: 160 };
  const line = (name: string, at: (x: number) => number): Named => ({
    name,
    width: 40,
    points: Array.from({ length: 61 }, (_, i) => ({ x: i * 10, y: at(i * 10) })),
  });

  test('stand inside the frame, apart from each other, and off their own line', () => {
    const lines = [
      line('rising', (x) => 150 - x / 5),
      line('falling', (x) => 20 + x / 5),
      line('level', () => 80),
    ];
    const places = placeNames(lines, frame);
    expect(places.map((p) => p.name)).toEqual(['rising', 'falling', 'level']);
    for (const [i, p] of places.entries()) {
      expect(p.y - 7).toBeGreaterThanOrEqual(0);
      expect(p.y + 7).toBeLessThanOrEqual(160);
      for (const l of lines) {
        for (const dx of [-20, 0, 20])
          expect(Math.abs(heightAt(l.points, p.x + dx) - p.y)).toBeGreaterThan(6);
      }
      for (const q of places.slice(i + 1)) {
        expect(Math.abs(p.x - q.x) >= 40 || Math.abs(p.y - q.y) >= 14).toBe(true);
      }
    }
  });

  test('a line that lies on another still gets a name', () => {
    const lines = [line('film', () => 80), line('part', () => 80)];
    const [a, b] = placeNames(lines, frame);
    expect(Math.abs((a?.x ?? 0) - (b?.x ?? 0)) >= 40 || Math.abs((a?.y ?? 0) - (b?.y ?? 0)) >= 14).toBe(true);
  });
});

describe('round numbers of an axis', () => {
  test('are multiples of 1, 2 or 5', () => {
    expect(roundTicks(0, 14, 7)).toEqual([0, 2, 4, 6, 8, 10, 12, 14]);
    expect(roundTicks(0, 0.3, 3)).toEqual([0, 0.1, 0.2, 0.3]);
    expect(roundTicks(18, 131, 5)).toEqual([50, 100]);
    expect(roundTicks(5, 5, 4)).toEqual([5]);
  });
  test('a span is widened to them and holds its numbers', () => {
    expect(roundSpan(19.9, 131, 5)).toEqual([0, 150]);
    const [low, high] = roundSpan(22, 22, 5);
    expect(low).toBeLessThanOrEqual(22);
    expect(high).toBeGreaterThan(low);
  });
});
