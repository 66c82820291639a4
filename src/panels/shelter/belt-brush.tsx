import { useApp } from '../../state/store.ts';
import { Choice } from '../parts/choice.tsx';
import { LengthField, ShareField } from '../parts/length-field.tsx';
import { Details } from '../parts/panel-head.tsx';
import { SpeciesPicker } from '../parts/species-picker.tsx';

/** What the next belt, wall or building is made of. */
export function BeltBrush() {
  const brush = useApp((app) => app.brush);
  const set = useApp((app) => app.setBrush);
  return (
    <Details title="What is drawn">
      <Choice
        label="It"
        value={brush.status}
        options={[
          { value: 'planned', label: 'is planned' },
          { value: 'existing', label: 'stands today' },
        ]}
        onChange={(status) => set({ status })}
      />
      <SpeciesPicker
        label="Belt or block of"
        value={brush.beltSpecies}
        none="no species: it does not grow"
        onChange={(beltSpecies) => set({ beltSpecies })}
      />
      <LengthField
        label="Belt width"
        valueM={brush.beltWidthM}
        minM={0.3}
        maxM={200}
        onChange={(beltWidthM) => set({ beltWidthM })}
      />
      <div className="pair">
        <LengthField
          label="Wall or net height"
          valueM={brush.wallHeightM}
          minM={0.2}
          maxM={40}
          onChange={(wallHeightM) => set({ wallHeightM })}
        />
        <ShareField
          label="Daylight through it"
          value={brush.wallPorosity}
          hint="0 % is solid, a net about 50 %"
          onChange={(wallPorosity) => set({ wallPorosity })}
        />
      </div>
      <LengthField
        label="Building height"
        valueM={brush.buildingHeightM}
        minM={0.5}
        maxM={120}
        onChange={(buildingHeightM) => set({ buildingHeightM })}
      />
    </Details>
  );
}
