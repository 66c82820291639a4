import { takenField } from '../../site/chosen-features.ts';
import { fieldsOf } from '../../state/area-figures.ts';
import { plural } from '../../state/format-words.ts';
import type { App } from '../../state/model.ts';

export function groundLine(app: App): string | null {
  const fields = fieldsOf(app.document);
  if (fields.length === 0) return 'no field yet';
  const taken = takenField(app.document);
  return taken?.properties.name && taken.properties.taken
    ? taken.properties.name
    : plural(fields.length, 'field');
}
