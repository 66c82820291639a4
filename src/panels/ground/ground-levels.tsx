import { useState } from 'react';
import { fallDegFromText } from '../../geo/fall-text.ts';
import { setSite } from '../../site/actions/set-site.ts';
import { useApp } from '../../state/store.ts';
import { EIGHT_POINTS } from '../../units/compass.ts';
import { FileButton } from '../parts/file-button.tsx';
import { Section } from '../parts/panel-head.tsx';
import { SelectField } from '../parts/select-field.tsx';
import { TextField } from '../parts/text-field.tsx';

/** How the ground lies: a fall in words, spot levels, or a raster. What is used now is said first. */
export function GroundLevels() {
  const site = useApp((app) => app.document.site);
  const description = useApp((app) => app.groundDescription);
  const missing = useApp((app) => app.missingFiles);
  const edit = useApp((app) => app.edit);
  const show = useApp((app) => app.show);
  const openFiles = useApp((app) => app.openFiles);
  const [wrong, setWrong] = useState<string | null>(null);
  const plane = site.terrainPlane;
  const fallText = plane && plane.fallDeg > 0 ? oneIn(plane.fallDeg) : 'level';
  const towardDeg = plane?.towardDeg ?? 135;
  const setPlane = (fallDeg: number, toward: number) =>
    edit('Set the fall of the ground', (document) =>
      setSite(document, { terrainPlane: { fallDeg, towardDeg: toward } }),
    );
  const usesPlane = !site.terrainFile && (site.spotLevels?.length ?? 0) < 3;
  return (
    <Section title="How the ground lies">
      <p className="soft small">{description}.</p>
      {site.terrainFile && missing.includes(site.terrainFile) ? (
        <p className="small warn">
          {site.terrainFile} is not on this device: open it, and the ground follows it.
        </p>
      ) : null}
      {usesPlane ? (
        <div className="pair">
          <TextField
            label="It falls"
            value={fallText}
            hint={wrong ? <span className="warn">{wrong}</span> : 'such as 1 in 15, 7 % or level'}
            onChange={(text) => {
              try {
                setPlane(fallDegFromText(text), towardDeg);
                setWrong(null);
              } catch (reason) {
                setWrong((reason as Error).message);
              }
            }}
          />
          <SelectField
            label="to the"
            value={String(Math.round(towardDeg / 45) * 45)}
            options={EIGHT_POINTS.map(({ azimuthDeg, name }) => ({ value: String(azimuthDeg), label: name }))}
            onChange={(value) => setPlane(plane?.fallDeg ?? 0, Number(value))}
          />
        </div>
      ) : null}
      <div className="buttons">
        <button type="button" onClick={() => show({ dialog: 'spot-levels' })}>
          Spot levels
        </button>
        <FileButton accept=".tif,.tiff" onFiles={(files) => void openFiles(files)}>
          Open a terrain raster
        </FileButton>
        {site.terrainFile ? (
          <button
            type="button"
            onClick={() =>
              edit('Leave the terrain file out', (document) => setSite(document, { terrainFile: undefined }))
            }
          >
            Leave {site.terrainFile} out
          </button>
        ) : null}
      </div>
    </Section>
  );
}

function oneIn(fallDeg: number): string {
  const run = 1 / Math.tan((fallDeg * Math.PI) / 180);
  return `1 in ${Number(run.toFixed(run < 10 ? 2 : 1))}`;
}
