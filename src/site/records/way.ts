import { z } from 'zod';
import { commonProperties, feature, lineGeometry, nonNegativeM, polygonGeometry } from './shared.ts';

/** Paths, ground kept free, and lines and drains: nothing is planted within `offsetM` of them. */
const wayProperties = <K extends 'path' | 'keepOut' | 'service'>(kind: K) =>
  z.looseObject({
    ...commonProperties,
    kind: z.literal(kind),
    offsetM: nonNegativeM.optional(),
    reason: z.string().optional(),
  });
const wayGeometry = z.union([lineGeometry, polygonGeometry]);
export const pathFeature = feature('path', wayProperties('path'), wayGeometry);
export const keepOutFeature = feature('keepOut', wayProperties('keepOut'), wayGeometry);
export const serviceFeature = feature('service', wayProperties('service'), wayGeometry);
export type PathFeature = z.infer<typeof pathFeature>;
export type KeepOutFeature = z.infer<typeof keepOutFeature>;
export type ServiceFeature = z.infer<typeof serviceFeature>;
