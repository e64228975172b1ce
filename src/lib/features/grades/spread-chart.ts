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

const INK = '#101418';

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
  show: (picture: SpreadPicture, colours: readonly string[]) => void;
  /** One colour a bar. Costs a fraction of `show`: a moving boundary changes colours only. */
  colour: (colours: readonly string[]) => void;
  destroy: () => void;
}

/** Draws the spread of a stock on a canvas. */
export function makeSpreadChart(canvas: HTMLCanvasElement): SpreadChart {
  let shown: readonly SpreadBar[] = [];
  const font = { size: 13, weight: 600 as const };
  const chart = new Chart<'bar' | 'line', { x: number; y: number }[]>(canvas, {
    type: 'bar',
    data: {
      datasets: [
        {
          type: 'bar',
          data: [],
          barPercentage: 1,
          categoryPercentage: 1,
          borderColor: INK,
          borderWidth: 1,
          grouped: false,
          order: 2
        },
        {
          type: 'line',
          data: [],
          borderColor: '#8a3b00',
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
          offset: false,
          grid: { display: false },
          border: { color: INK, width: 2 },
          ticks: { color: INK, font, maxRotation: 0, maxTicksLimit: 8 },
          afterFit: (scale) => {
            scale.paddingLeft = 0;
            scale.paddingRight = 0;
          }
        },
        y: {
          beginAtZero: true,
          border: { color: INK, width: 2 },
          grid: { color: '#dfe4e8' },
          ticks: { color: INK, font, maxTicksLimit: 5, precision: 0 },
          afterFit: (scale) => {
            scale.width = PLOT_LEFT_PX;
          }
        }
      }
    },
    plugins: [{ id: 'intervals', afterDatasetsDraw: (drawn) => drawIntervals(drawn, shown) }]
  });

  return {
    show: (picture, colours) => {
      shown = picture.bars;
      const [bars, outline] = chart.data.datasets;
      bars.data = picture.bars.map(({ fromMm, toMm, slates }) => ({
        x: (fromMm + toMm) / 2,
        y: slates
      }));
      bars.backgroundColor = [...colours];
      outline.data = picture.outline.map((slates, index) => ({
        x: (picture.bars[index].fromMm + picture.bars[index].toMm) / 2,
        y: slates
      }));
      const { x, y } = chart.options.scales as Record<'x' | 'y', ScaleOptions>;
      x.min = picture.fromMm;
      x.max = picture.toMm;
      x.ticks.callback = y.ticks.callback = (value) => picture.number(Number(value));
      y.suggestedMax = Math.max(1, ...picture.bars.map(({ high = 0 }) => high));
      chart.update('none');
    },
    colour: (colours) => {
      const [bars] = chart.data.datasets;
      const drawn = bars.backgroundColor as readonly string[];
      if (colours.every((colour, index) => colour === drawn[index])) return;
      bars.backgroundColor = [...colours];
      for (const [index, bar] of chart.getDatasetMeta(0).data.entries())
        bar.options = { ...bar.options, backgroundColor: colours[index] };
      chart.draw();
    },
    destroy: () => chart.destroy()
  };
}

interface ScaleOptions {
  min?: number;
  max?: number;
  suggestedMax?: number;
  ticks: { callback?: (value: number | string) => string };
}

/** A whisker on every bar: from the least to the most slates that the sample allows. */
function drawIntervals(chart: Chart, bars: readonly SpreadBar[]): void {
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
    ctx.strokeStyle = '#ffffff';
    ctx.stroke(whisker);
    ctx.lineWidth = 2;
    ctx.strokeStyle = INK;
    ctx.stroke(whisker);
  }
  ctx.restore();
}
