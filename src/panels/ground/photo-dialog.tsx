import { useState } from 'react';
import { type PictureSize, type Pixel, placeByDistance } from '../../geo/picture-placement.ts';
import { placeFromText } from '../../geo/place-from-text.ts';
import { setSite } from '../../site/actions/set-site.ts';
import { fileUrl } from '../../state/site-files.ts';
import { useApp } from '../../state/store.ts';
import { Dialog } from '../parts/dialog.tsx';
import { LengthField } from '../parts/length-field.tsx';
import { NumberField } from '../parts/number-field.tsx';
import { TextField } from '../parts/text-field.tsx';
import { PictureSpots } from './picture-spots.tsx';

/** A scan or photo is laid on the ground by two spots of known distance and the place of the first. */
export function PhotoDialog() {
  const name = useApp((app) => app.pictureToLay);
  const show = useApp((app) => app.show);
  const edit = useApp((app) => app.edit);
  const centre = useApp((app) => app.centre);
  const [size, setSize] = useState<PictureSize | null>(null);
  const [spots, setSpots] = useState<readonly [Pixel, Pixel] | null>(null);
  const [lengthM, setLengthM] = useState<number | null>(null);
  const [bearingDeg, setBearingDeg] = useState<number | null>(null);
  const [placeText, setPlaceText] = useState(`${centre[1].toFixed(5)}, ${centre[0].toFixed(5)}`);
  const [wrong, setWrong] = useState<string | null>(null);
  const close = () => show({ dialog: null, pictureToLay: null });
  const url = name ? fileUrl(name) : null;
  if (!name || !url) return null;

  const take = () => {
    if (!size || !spots || lengthM === null) {
      setWrong(
        'The distance between the two spots is missing: measure it on the ground or read it off the map.',
      );
      return;
    }
    try {
      const placed = placeByDistance(size, {
        from: spots[0],
        to: spots[1],
        lengthM,
        bearingDeg: bearingDeg ?? undefined,
        known: { pixel: spots[0], lonLat: placeFromText(placeText) },
      });
      const cornersLonLat = placed.cornersLonLat.map(([lon, lat]): [number, number] => [lon, lat]);
      edit(`Lay ${name} on the ground`, (document) =>
        setSite(document, {
          pictures: [
            ...(document.site.pictures ?? []).filter((picture) => picture.file !== name),
            { file: name, cornersLonLat, opacity: 0.8 },
          ],
        }),
      );
      close();
    } catch (reason) {
      setWrong((reason as Error).message);
    }
  };

  return (
    <Dialog
      title={`Lay ${name} on the ground`}
      broad
      onClose={close}
      footer={
        <button type="button" className="main" onClick={take}>
          Lay it on
        </button>
      }
    >
      <p className="soft">
        Put the two marks on spots whose distance you know: corners of a house, gate posts, crossings on the
        map’s grid.
      </p>
      <PictureSpots
        url={url}
        spots={spots}
        onSize={(natural) => {
          setSize(natural);
          const { widthPx, heightPx } = natural;
          setSpots([
            { x: widthPx * 0.25, y: heightPx * 0.5 },
            { x: widthPx * 0.75, y: heightPx * 0.5 },
          ]);
        }}
        onMove={(index, pixel) => {
          if (spots) setSpots(index === 0 ? [pixel, spots[1]] : [spots[0], pixel]);
        }}
      />
      <div className="pair">
        <LengthField
          label="From mark 1 to mark 2"
          valueM={lengthM}
          minM={0.5}
          maxM={20_000}
          hint="on the ground"
          onChange={setLengthM}
        />
        <NumberField
          label="In the direction"
          value={bearingDeg}
          unit="° from true north"
          min={0}
          max={360}
          hint="empty: the top of the picture is north"
          onChange={setBearingDeg}
          onClear={() => setBearingDeg(null)}
        />
      </div>
      <TextField
        label="Mark 1 lies at"
        value={placeText}
        hint="latitude and longitude"
        onChange={setPlaceText}
      />
      {wrong ? <p className="field-wrong">{wrong}</p> : null}
    </Dialog>
  );
}
