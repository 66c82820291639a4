import { useState } from 'react';
import type { PictureRaster } from '../state/picture-raster.ts';
import { useApp } from '../state/store.ts';
import { COLD_AIR_BANDS } from '../units/bands.ts';
import { bandRanges } from './band-ranges.ts';
import { EndSwitch, Supposed } from './end-switch.tsx';
import { MarksKey } from './marks-key.tsx';
import './legend.css';

const NARROW = '(max-width: 700px)';
const PANEL_OVER_MAP = '(max-width: 1100px)';

interface LegendProps {
  readonly raster: PictureRaster | null;
  readonly hatched: boolean;
  readonly onHatch: (hatched: boolean) => void;
}

/** What the inks mean, with their ranges, and how the plan's marks are read. */
export function Legend({ raster, hatched, onHatch }: LegendProps) {
  const panelOpen = useApp((app) => app.panelOpen);
  // Until the person says otherwise it is folded where little of the map is left.
  const [chosen, setChosen] = useState<boolean | null>(null);
  const open = chosen ?? !(matchMedia(NARROW).matches || (panelOpen && matchMedia(PANEL_OVER_MAP).matches));
  // Without a picture the legend is only the key to the marks, which stays folded until it is asked for.
  const [marksOpen, setMarksOpen] = useState(false);
  return (
    <div className="map-legend" data-testid="legend">
      <button
        type="button"
        className="map-legend-title"
        aria-expanded={raster ? open : marksOpen}
        onClick={() => (raster ? setChosen(!open) : setMarksOpen(!marksOpen))}
      >
        {raster ? raster.bands.quantity : 'How things are marked'}
      </button>
      <Supposed />
      {open && raster && <Bands raster={raster} hatched={hatched} onHatch={onHatch} />}
      {raster && open && (
        <details>
          <summary>How things are marked</summary>
          <MarksKey />
        </details>
      )}
      {!raster && marksOpen && <MarksKey />}
    </div>
  );
}

function Bands({ raster, hatched, onHatch }: LegendProps & { readonly raster: PictureRaster }) {
  const rows = bandRanges(raster.bands);
  return (
    <>
      <p className="map-legend-detail">
        {raster.detail}
        {raster.stale && <span className="map-legend-stale"> · from before your last change</span>}
      </p>
      <ul className="map-bands">
        {rows.map((row) => (
          <li key={row.name}>
            <i style={{ background: row.ink }} aria-hidden="true" />
            <span>{row.name}</span>
            <span className="map-band-range">{row.range}</span>
          </li>
        ))}
      </ul>
      {raster.lines.length > 0 && (
        <ul className="map-bands map-lines">
          {raster.lines.map((line) => (
            <li key={line.value}>
              <svg width="28" height="22" aria-hidden="true">
                <path d="M1 11h26" />
              </svg>
              <span>{line.words}</span>
            </li>
          ))}
        </ul>
      )}
      {raster.bands === COLD_AIR_BANDS && (
        <ul className="map-bands map-lines map-flows">
          <li>
            <svg width="28" height="22" aria-hidden="true">
              <path d="M1 11h25M20 6l6 5-6 5" />
            </svg>
            <span>where it runs together</span>
          </li>
        </ul>
      )}
      <EndSwitch />
      <label className="map-hatch">
        <input type="checkbox" checked={hatched} onChange={(event) => onHatch(event.target.checked)} />
        Hatch the darker bands
      </label>
    </>
  );
}
