import { setSite } from '../../site/actions/set-site.ts';
import { siteDefaults } from '../../site/records/site.ts';
import { useApp } from '../../state/store.ts';
import { ShareField } from '../parts/length-field.tsx';

/** What a patch must keep to have enough light, for all patches that do not say otherwise. */
export function LightToKeep() {
  const keep = useApp((app) => app.document.site.lightToKeep) ?? siteDefaults.lightToKeep;
  const edit = useApp((app) => app.edit);
  const change = (part: Partial<typeof keep>) =>
    edit('Change the light to keep', (site) => setSite(site, { lightToKeep: { ...keep, ...part } }));
  return (
    <div className="section">
      <div className="pair">
        <ShareField
          label="Light to keep"
          value={keep.share}
          hint="of open light, growing season"
          onChange={(share) => change({ share })}
        />
        <ShareField
          label="On this much of it"
          value={keep.areaShare}
          hint="of the patch’s ground"
          onChange={(areaShare) => change({ areaShare })}
        />
      </div>
    </div>
  );
}
