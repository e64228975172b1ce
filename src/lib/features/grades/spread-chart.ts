import {
  BarController,
  BarElement,
  Chart,
  LineController,
  LineElement,
  LinearScale,
  PointElement
} from 'chart.js';

Chart.register(BarController, BarElement, LineController, LineElement, LinearScale, PointElement);

/** Space for the numbers beside the plot, so that handles over it know where a thickness lies. */
export const PLOT_LEFT_PX = 46;
export const PLOT_RIGHT_PX = 16;

/** Colours of the page as they are now: they follow the device's light or dark scheme. */
interface Palette {
  readonly ink: string;
  readonly paper: string;
  readonly faint: string;
  readonly focus: string;
}

/** One colour, or two where a boundary cuts the bar: the thinner pile's up to `atMm`. */
export type BarColour =
  string | { readonly thinner: string; readonly thicker: string; readonly atMm: number };

/** One bar of the spread, in slates of the stock. */
export interface SpreadBar {
  readonly fromMm: number;
  readonly toMm: number;
  readonly slates: number;
  /** Interval of the estimate; left out where nothing tells or all slates were gauged. */
  readonly low?: number;
  readonly high?: number;
}

/** Everything that is drawn. */
export interface SpreadPicture {
  readonly bars: readonly SpreadBar[];
  readonly fromMm: number;
  readonly toMm: number;
  /** Slates by bar of one pallet, drawn as an outline; empty for none. */
  readonly outline: readonly number[];
  readonly number: (value: number) => string;
}

/** A drawn spread: show another picture, colour its bars, or take it away. */
export interface SpreadChart {
  show: (picture: SpreadPicture, colours: readonly BarColour[]) => void;
  /** One colour a bar. Costs a fraction of `show`: a moving boundary changes colours only. */
  colour: (colours: readonly BarColour[]) => void;
  destroy: () => void;
}

/** Draws the spread of a stock on a canvas. */
export function makeSpreadChart(
  canvas: HTMLCanvasElement,
  picture: SpreadPicture,
  colours: readonly BarColour[]
): SpreadChart {
  let shown = picture.bars;
  let filled = colours;
  let palette = paletteOf(canvas);
  const family = getComputedStyle(canvas).fontFamily;
  const font = { size: 13, weight: 'bold' as const, family };
  const { ink: INK } = palette;
  const chart = new Chart<'bar' | 'line', { x: number; y: number }[]>(canvas, {
    type: 'bar',
    data: {
      datasets: [
        {
          type: 'bar',
          data: barsOf(picture),
          backgroundColor: ({ dataIndex, chart: drawn }) => fillOf(drawn, dataIndex),
          barPercentage: 1,
          categoryPercentage: 1,
          borderColor: INK,
          borderWidth: 1,
          grouped: false,
          order: 2
        },
        {
          type: 'line',
          data: outlineOf(picture),
          borderColor: palette.focus,
          borderWidth: 3,
          stepped: 'middle',
          pointRadius: 0,
          order: 1
        }
      ]
    },
    options: {
      animation: false,
      events: [],
      maintainAspectRatio: false,
      layout: { padding: { top: 6, right: PLOT_RIGHT_PX } },
      scales: {
        x: {
          type: 'linear',
          min: picture.fromMm,
          max: picture.toMm,
          offset: false,
          grid: { display: false },
          border: { color: INK, width: 2 },
          ticks: {
            color: INK,
            font,
            maxRotation: 0,
            maxTicksLimit: 8,
            callback: callbackOf(picture)
          },
          afterFit: (scale) => {
            scale.paddingLeft = 0;
            scale.paddingRight = 0;
          }
        },
        y: {
          beginAtZero: true,
          suggestedMax: highestOf(picture),
          border: { color: INK, width: 2 },
          grid: { color: palette.faint },
          ticks: {
            color: INK,
            font,
            maxTicksLimit: 5,
            precision: 0,
            callback: callbackOf(picture)
          },
          afterFit: (scale) => {
            scale.width = PLOT_LEFT_PX;
          }
        }
      }
    },
    plugins: [
      { id: 'intervals', afterDatasetsDraw: (drawn) => drawIntervals(drawn, shown, palette) }
    ]
  });

  /** What a bar is filled with; a boundary within it parts the colours where it stands. */
  function fillOf(drawn: Chart, index: number): string | CanvasGradient {
    const colour = filled[index];
    if (colour === undefined || typeof colour === 'string') return colour ?? palette.faint;
    const { fromMm, toMm } = shown[index];
    const [left, right] = [fromMm, toMm].map((mm) => drawn.scales.x.getPixelForValue(mm));
    if (!(right > left)) return colour.thicker;
    const gradient = drawn.ctx.createLinearGradient(left, 0, right, 0);
    const at = Math.min(1, Math.max(0, (colour.atMm - fromMm) / (toMm - fromMm)));
    gradient.addColorStop(at, colour.thinner);
    gradient.addColorStop(at, colour.thicker);
    return gradient;
  }

  const scheme = matchMedia('(prefers-color-scheme: dark)');
  const followScheme = (): void => {
    palette = paletteOf(canvas);
    const [bars, outline] = chart.data.datasets;
    bars.borderColor = palette.ink;
    outline.borderColor = palette.focus;
    const { x, y } = chart.options.scales as Record<'x' | 'y', ScaleOptions>;
    for (const scale of [x, y]) scale.border.color = scale.ticks.color = palette.ink;
    y.grid.color = palette.faint;
    chart.update('none');
  };
  scheme.addEventListener('change', followScheme);

  return {
    show: (next, fills) => {
      shown = next.bars;
      filled = fills;
      const [bars, outline] = chart.data.datasets;
      bars.data = barsOf(next);
      outline.data = outlineOf(next);
      const { x, y } = chart.options.scales as Record<'x' | 'y', ScaleOptions>;
      x.min = next.fromMm;
      x.max = next.toMm;
      x.ticks.callback = y.ticks.callback = callbackOf(next);
      y.suggestedMax = highestOf(next);
      chart.update('none');
    },
    colour: (fills) => {
      if (fills.every((fill, index) => isSame(fill, filled[index]))) return;
      filled = fills;
      for (const [index, bar] of chart.getDatasetMeta(0).data.entries())
        bar.options = { ...bar.options, backgroundColor: fillOf(chart, index) };
      chart.draw();
    },
    destroy: () => {
      scheme.removeEventListener('change', followScheme);
      chart.destroy();
    }
  };
}

/** A point for each bar, in its middle. */
function barsOf({ bars }: SpreadPicture): { x: number; y: number }[] {
  return bars.map(({ fromMm, toMm, slates }) => ({ x: (fromMm + toMm) / 2, y: slates }));
}

function outlineOf({ bars, outline }: SpreadPicture): { x: number; y: number }[] {
  return outline.map((slates, index) => ({
    x: (bars[index].fromMm + bars[index].toMm) / 2,
    y: slates
  }));
}

const callbackOf =
  ({ number }: SpreadPicture) =>
  (value: number | string): string =>
    number(Number(value));

function highestOf({ bars }: SpreadPicture): number {
  return Math.max(1, ...bars.map(({ high = 0 }) => high));
}

interface ScaleOptions {
  min?: number;
  max?: number;
  suggestedMax?: number;
  ticks: { callback?: (value: number | string) => string; color?: string };
  border: { color?: string };
  grid: { color?: string };
}

function paletteOf(canvas: HTMLCanvasElement): Palette {
  const style = getComputedStyle(canvas);
  const colour = (name: string): string => style.getPropertyValue(name).trim();
  return {
    ink: colour('--ink'),
    paper: colour('--paper'),
    faint: colour('--faint'),
    focus: colour('--focus')
  };
}

function isSame(one: BarColour, other: BarColour | undefined): boolean {
  if (typeof one === 'string' || typeof other !== 'object') return one === other;
  return one.atMm === other.atMm && one.thinner === other.thinner && one.thicker === other.thicker;
}

/** A whisker on every bar: from the least to the most slates that the sample allows. */
function drawIntervals(chart: Chart, bars: readonly SpreadBar[], palette: Palette): void {
  const { ctx, scales } = chart;
  ctx.save();
  for (const { fromMm, toMm, low, high } of bars) {
    if (low === undefined || high === undefined) continue;
    const middle = scales.x.getPixelForValue((fromMm + toMm) / 2);
    const reach = Math.min(
      4,
      (scales.x.getPixelForValue(toMm) - scales.x.getPixelForValue(fromMm)) / 3
    );
    const [top, bottom] = [scales.y.getPixelForValue(high), scales.y.getPixelForValue(low)];
    const whisker = new Path2D();
    whisker.moveTo(middle, top);
    whisker.lineTo(middle, bottom);
    for (const end of [top, bottom]) {
      whisker.moveTo(middle - reach, end);
      whisker.lineTo(middle + reach, end);
    }
    // A light edge keeps the whisker seen on a dark bar.
    ctx.lineWidth = 4;
    ctx.strokeStyle = palette.paper;
    ctx.stroke(whisker);
    ctx.lineWidth = 2;
    ctx.strokeStyle = palette.ink;
    ctx.stroke(whisker);
  }
  ctx.restore();
}
