import type { App } from '../../state/model.ts';
import { treesOf } from './trees-of.ts';

export function treesLine(app: App): string | null {
  const trees = treesOf(app.document, app.layout);
  if (trees.length === 0) return 'none yet';
  const planned = trees.filter((tree) => tree.properties.status === 'planned').length;
  const standing = trees.length - planned;
  if (planned === 0) return `${standing} standing`;
  return standing === 0 ? `${planned} planned` : `${planned} planned, ${standing} standing`;
}
