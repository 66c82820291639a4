import { setSite } from '../../site/actions/set-site.ts';
import type { SurfaceLeaves } from '../../site/records/site.ts';
import { useApp } from '../../state/store.ts';
import { surfaceWords } from '../../state/surface-words.ts';
import { FileButton } from '../parts/file-button.tsx';
import { Section } from '../parts/panel-head.tsx';
import { SelectField } from '../parts/select-field.tsx';

/** The woods around the site from a raster of their tops, instead of drawing each. */
export function WoodsAround() {
  const { surfaceFile, surfaceLeaves = 'deciduous' } = useApp((app) => app.document.site);
  // One string, so that the panel renders when the words change and not with every step of the hand.
  const said = useApp((app) => surfaceWords(app)?.text ?? null);
  const warns = useApp((app) => surfaceWords(app)?.tone === 'warning');
  const edit = useApp((app) => app.edit);
  const openSurface = useApp((app) => app.openSurface);
  return (
    <Section title="Woods around">
      {said === null ? (
        <p className="soft small">
          Draw what stands near. The rest may come from a raster of tree tops, such as an air survey gives.
        </p>
      ) : (
        <p className={warns ? 'small warn' : 'soft small'}>{said}</p>
      )}
      {surfaceFile ? (
        <SelectField<SurfaceLeaves>
          label="In winter its woods are"
          value={surfaceLeaves}
          options={[
            { value: 'deciduous', label: 'leafless' },
            { value: 'mixed', label: 'half evergreen' },
            { value: 'evergreen', label: 'evergreen' },
          ]}
          hint="They shade where nothing is drawn, and keep their height. For shelter, draw the wood."
          onChange={(leaves) =>
            edit('Say what the woods around are', (document) => setSite(document, { surfaceLeaves: leaves }))
          }
        />
      ) : null}
      <div className="buttons">
        <FileButton accept=".tif,.tiff" onFiles={([file]) => void openSurface(file)}>
          Open a surface raster
        </FileButton>
        {surfaceFile ? (
          <button
            type="button"
            onClick={() =>
              edit('Leave the surface file out', (document) =>
                setSite(document, { surfaceFile: undefined, surfaceLeaves: undefined }),
              )
            }
          >
            Leave {surfaceFile} out
          </button>
        ) : null}
      </div>
    </Section>
  );
}
