/**
 * How one property is put to a person: the property panels render their forms from lists of these, and the sentences
 * about wrong input take their words from them.
 */
export interface PropertyField {
  /** Name of the property in the file. */
  readonly key: string;
  /** Plain words, first letter upper case, no unit. */
  readonly label: string;
  readonly unit: FieldUnit;
  /** One sentence: what it means, what happens when it is left empty. */
  readonly help: string;
  /**
   * Limits in the file's own unit, both included unless `aboveMin`. What lies below `min` is refused; the `max` of a
   * length or a number is where a slip of the pen becomes likely, and is only reported.
   */
  readonly min?: number;
  readonly max?: number;
  /** True where `min` itself is not allowed. */
  readonly aboveMin?: boolean;
  readonly choices?: readonly Choice[];
  /** Kept behind *details*: few people need it. */
  readonly detail?: boolean;
}

/**
 * What kind of value a field holds. `m` metres; `m2/m3` leaf area per volume; `share` 0 to 1 in the file, shown as
 * percent; `year` a calendar year; `count` a whole number; `date` YYYY-MM-DD; `layout` the name of one of the site's
 * layouts or nothing for all of them; `botanicalName` and `rootstock` are names in the catalogue, `botanicalNames` a list
 * of them.
 */
export type FieldUnit =
  | 'm'
  | 'm2/m3'
  | 'share'
  | 'year'
  | 'count'
  | 'number'
  | 'text'
  | 'longText'
  | 'date'
  | 'yesNo'
  | 'choice'
  | 'layout'
  | 'botanicalName'
  | 'botanicalNames'
  | 'rootstock';

export interface Choice {
  readonly value: string;
  readonly label: string;
}

/** One kind of feature: its words, its shapes, its defaults and its form. */
export interface KindRecord {
  readonly kind: string;
  /** "belt", "wood or block". */
  readonly label: string;
  readonly plural: string;
  readonly geometryTypes: readonly ('Point' | 'LineString' | 'Polygon')[];
  readonly fields: readonly PropertyField[];
}
