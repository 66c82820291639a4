import { setSite } from '../../site/actions/set-site.ts';
import { useApp } from '../../state/store.ts';
import { ShareField } from '../parts/length-field.tsx';
import { TextField } from '../parts/text-field.tsx';

/** Pictures that lie on the ground, and tiles from an address. */
export function Underlays() {
  const pictures = useApp((app) => app.document.site.pictures) ?? [];
  const tileAddress = useApp((app) => app.document.site.tileAddress) ?? '';
  const edit = useApp((app) => app.edit);
  const say = useApp((app) => app.say);
  return (
    <>
      {pictures.map((picture, index) => (
        <div key={picture.file} className="section">
          <b>{picture.file}</b>
          <ShareField
            label="How strongly it shows"
            value={picture.opacity ?? 0.8}
            onChange={(opacity) =>
              edit('Change how strongly a picture shows', (document) =>
                setSite(document, {
                  pictures: pictures.map((each, i) => (i === index ? { ...each, opacity } : each)),
                }),
              )
            }
          />
          <div className="buttons">
            <button
              type="button"
              onClick={() =>
                edit('Take a picture off', (document) =>
                  setSite(document, { pictures: pictures.filter((_, i) => i !== index) }),
                )
              }
            >
              Take it off
            </button>
          </div>
        </div>
      ))}
      <TextField
        label="Address of map tiles"
        type="url"
        value={tileAddress}
        placeholder="https://…/{z}/{x}/{y}.png"
        hint="Only if you have the right to use them; tiles come over the network."
        onChange={(text) => {
          const address = text.trim();
          if (address !== '' && !['{z}', '{x}', '{y}'].every((part) => address.includes(part)))
            return say({
              tone: 'warning',
              text: 'The address of map tiles holds {z}, {x} and {y} where the tile’s numbers go.',
            });
          edit('Change the map tiles', (document) =>
            setSite(document, { tileAddress: address || undefined }),
          );
        }}
      />
    </>
  );
}
