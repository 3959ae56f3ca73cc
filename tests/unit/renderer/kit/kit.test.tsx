import { scaleLinear } from 'd3-scale';
import type { ReactElement } from 'react';
import { renderToStaticMarkup } from 'react-dom/server';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { GivenBoxSize } from '../../../../renderer/kit/chart/box-size';
import { Chart } from '../../../../renderer/kit/chart/Chart';
import { Clipped } from '../../../../renderer/kit/chart/Clipped';
import { Cursor, NamedLine } from '../../../../renderer/kit/chart/Cursor';
import { Hatch, useHatch } from '../../../../renderer/kit/chart/Hatch';
import { Band, Line, pointsOf } from '../../../../renderer/kit/chart/Line';
import { Plot } from '../../../../renderer/kit/chart/Plot';
import { usePlotArea } from '../../../../renderer/kit/chart/plot-area';
import { levelTick, Ticks } from '../../../../renderer/kit/chart/Ticks';
import type { FactTableProps } from '../../../../renderer/kit/table/FactTable';
import { stubPage } from '../support/window-stubs';

const MARGINS = { left: 40, right: 10, top: 20, bottom: 30 };

function Example(): ReactElement {
  const { box, ...area } = usePlotArea(MARGINS);
  const x = scaleLinear([0, 10], [area.left, area.right]);
  const y = scaleLinear([-10, 10], [area.bottom, area.top]);
  const hatch = useHatch();
  return (
    <Chart title="Example" caption="Levels" readout="4 dB" live box={box}>
      <Plot area={area} x={x} y={y} describe="rises to 4 dB">
        <Hatch {...hatch} ink="faint" />
        <rect fill={hatch.fill} />
        <Ticks along="x" at={[0, 5, 10]} lastAtEdge />
        <Ticks along="y" at={[-10, 0, 10]} axisAt={0} text={levelTick} />
        <Clipped>
          <Line className="level" points={pointsOf([0, 5, 10], [0, 2, 4])} />
          <Band
            className="spread"
            upper={[
              [0, 5],
              [10, 5],
            ]}
            lower={[
              [0, 0],
              [10, 0],
            ]}
          />
        </Clipped>
        <Cursor at={5} />
        <NamedLine at={10} text="end" side="left" />
      </Plot>
    </Chart>
  );
}

const drawn = (chart: ReactElement): string =>
  renderToStaticMarkup(<GivenBoxSize value={{ width: 250, height: 150 }}>{chart}</GivenBoxSize>);

describe('a chart of the kit', () => {
  it('is a named figure with its picture in words', () => {
    const markup = drawn(<Example />);
    expect(markup).toContain('<figure class="figure" aria-label="Example">');
    expect(markup).toContain(
      '<span class="readout" data-part="readout" aria-live="polite">4 dB</span>',
    );
    expect(markup).toContain('width="250" height="150" role="img" aria-label="rises to 4 dB"');
  });

  it('draws nothing before its box has a size', () => {
    expect(renderToStaticMarkup(<Example />)).not.toContain('<svg');
  });

  it('puts lines, bands, cursor and figures on its scales', () => {
    const markup = drawn(<Example />);
    // 200 by 100 px of plot: 20 px a step across, 5 px a dB.
    expect(markup).toContain('<path class="level" d="M40,70L140,60L240,50"></path>');
    expect(markup).toContain('<path class="spread" d="M40,45L240,45L240,70L40,70Z"></path>');
    expect(markup).toContain('<line class="cursor-line" x1="140" x2="140" y1="20" y2="120">');
    expect(markup).toContain('<line class="axis" x1="40" x2="240" y1="70" y2="70">');
    expect(markup).toContain('y="124" text-anchor="end">−10</text>');
    expect(markup).toContain('x="248" y="135" text-anchor="end">10</text>');
    expect(markup).toContain('x="235" y="13" text-anchor="end">end</text>');
  });

  it('names hatches and clips so that two charts on a page never share one', () => {
    const ids = [
      ...drawn(
        <>
          <Example />
          <Example />
        </>,
      ).matchAll(/ id="([^"]+)"/g),
    ].map(([, id]) => id);
    expect(ids).toHaveLength(4);
    expect(new Set(ids).size).toBe(4);
  });
});

interface Part {
  readonly name: string;
  readonly areaM2: number;
}

const PARTS: readonly Part[] = [
  { name: 'floor', areaM2: 20 },
  { name: 'door', areaM2: 1.8 },
];

describe('a table of the kit', () => {
  // The table previews rows by a store of the window, which asks for a page when it is loaded.
  beforeAll(() => void stubPage());
  afterAll(() => void vi.unstubAllGlobals());

  const table = async (props: Partial<FactTableProps<Part>>): Promise<string> => {
    const { FactTable } = await import('../../../../renderer/kit/table/FactTable');
    return renderToStaticMarkup(
      <FactTable
        title="Areas"
        caption="Areas"
        scrolls="Areas of all faces"
        rows={PARTS}
        keyOf={({ name }) => name}
        columns={[
          { key: 'name', head: 'face', cell: ({ name }) => name },
          {
            key: 'area',
            head: 'area',
            cell: ({ areaM2 }) => `${areaM2} m²`,
            cellClass: ({ areaM2 }) => (areaM2 > 10 ? 'large' : undefined),
          },
        ]}
        {...props}
      />,
    );
  };

  it('names its rows, and its box can be scrolled by keyboard', async () => {
    const markup = await table({});
    expect(markup).toContain(
      '<div class="box" data-part="table" tabindex="0" role="group" aria-label="Areas of all faces">',
    );
    expect(markup).toContain('<tr><th scope="row">floor</th><td class="large">20 m²</td></tr>');
    expect(markup).not.toContain('<button');
  });

  it('has a button in each name where a row can be chosen, and marks the chosen one', async () => {
    const markup = await table({ chosen: 'door', onChoose: () => undefined });
    expect(markup).toContain(
      '<tr class="chosen"><th scope="row"><button type="button" aria-pressed="true">door</button></th>',
    );
    expect(markup).toContain('<button type="button" aria-pressed="false">floor</button>');
  });

  it('unfolds more under the chosen row alone', async () => {
    const markup = await table({
      chosen: 'door',
      onChoose: () => undefined,
      more: ({ name }) => `Of the ${name}.`,
    });
    expect(markup).toContain('<button type="button" aria-expanded="true">door</button>');
    expect(markup).toContain('<tr class="chosen more"><td colSpan="2">Of the door.</td></tr>');
    expect(markup).not.toContain('Of the floor.');
  });

  it('says what is missing in place of an empty table', async () => {
    const markup = await table({ rows: [], empty: <p>No face yet.</p> });
    expect(markup).toContain('<p>No face yet.</p>');
    expect(markup).not.toContain('<table');
  });
});
