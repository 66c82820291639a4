import { bandRanges } from '../../map/band-ranges.ts';
import { pairRaster } from '../../state/pair-shown.ts';
import { useApp } from '../../state/store.ts';
import '../../map/legend.css';

/** What the inks of both plans mean. */
export function PairLegend(props: { hatched: boolean; onHatch: (hatched: boolean) => void }) {
  const raster = useApp((app) => pairRaster(app, 0));
  if (!raster) return null;
  return (
    <div className="pair-legend">
      <h3>{raster.bands.quantity}</h3>
      <p className="small soft">{raster.detail}</p>
      <ul className="map-bands">
        {bandRanges(raster.bands).map((row) => (
          <li key={row.name}>
            <i style={{ background: row.ink }} aria-hidden="true" />
            <span>{row.name}</span>
            <span className="map-band-range">{row.range}</span>
          </li>
        ))}
      </ul>
      <label className="map-hatch">
        <input
          type="checkbox"
          checked={props.hatched}
          onChange={(event) => props.onHatch(event.target.checked)}
        />
        Hatch the darker bands
      </label>
    </div>
  );
}
