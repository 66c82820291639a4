import type { StoreApi } from 'zustand/vanilla';
import { newSite } from '../site/new-site.ts';
import { parseSite } from '../site/parse-site.ts';
import { serialiseSite } from '../site/serialise-site.ts';
import { BadInputError } from '../units/bad-input.ts';
import { downloadText } from './download.ts';
import { filesOf } from './load-references.ts';
import type { Actions, App } from './model.ts';
import { openFile, openSurface } from './open-file.ts';
import { keepFile } from './site-files.ts';

type FileActions = Pick<
  Actions,
  'newSite' | 'openDemo' | 'openFiles' | 'openSurface' | 'saveFile' | 'keepSiteFile'
>;

/** Sites and files that come in and go out. */
export function fileActions(set: StoreApi<App>['setState'], get: StoreApi<App>['getState']): FileActions {
  const keepBytes = async (name: string, bytes: ArrayBuffer, type: string) => {
    await keepFile(name, bytes, type);
    set((app) => ({ filesKept: app.filesKept + 1 }));
  };
  /** Says in a sentence what keeps a file from being used. */
  const opened = async (file: File, open: () => Promise<void>) => {
    try {
      await open();
    } catch (reason) {
      const text =
        reason instanceof BadInputError
          ? reason.message
          : `${file.name}: the file could not be read; try to save it again from where it comes.`;
      get().say({ tone: 'warning', text });
    }
  };
  return {
    async newSite(placeLonLat, name) {
      get().openDocument(newSite(placeLonLat, name, new Date().getFullYear()), {
        step: 'ground',
        picture: 'plain',
        layout: null,
        dialog: null,
      });
    },
    async openDemo(which) {
      try {
        const address = (file: string) => new URL(`./${which}/${file}`, document.baseURI);
        const text = await (await fetched(address(`${which}.site.geojson`))).text();
        const { document: site } = parseSite(text, `${which}.site.geojson`);
        for (const name of filesOf(site.site)) {
          const response = await fetched(address(name));
          await keepBytes(name, await response.arrayBuffer(), response.headers.get('content-type') ?? '');
        }
        get().openDocument(site, {
          step: 'light',
          picture: 'light-share',
          year: 20,
          period: 'season',
          // The demo begins with what is common: the field that is taken.
          layout: null,
          dialog: null,
        });
      } catch (reason) {
        get().say({
          tone: 'warning',
          text:
            reason instanceof BadInputError
              ? reason.message
              : 'The demo could not be loaded: start a new site, or open a file of your own.',
        });
      }
    },
    async openFiles(files) {
      for (const file of files) await opened(file, () => openFile(file, get(), keepBytes));
    },
    async openSurface(file) {
      await opened(file, () => openSurface(file, get(), keepBytes));
    },
    async keepSiteFile(file) {
      await keepBytes(file.name, await file.arrayBuffer(), file.type);
      return file.name;
    },
    saveFile() {
      const { document: site } = get();
      const name = `${fileNameOf(site.site.name)}.site.geojson`;
      downloadText(name, serialiseSite(site), 'application/geo+json');
      const others = filesOf(site.site);
      get().say({
        tone: 'plain',
        text:
          others.length > 0
            ? `Saved as ${name}. It refers to ${others.join(', ')}: keep them together.`
            : `Saved as ${name}.`,
      });
    },
  };
}

async function fetched(address: URL): Promise<Response> {
  const response = await fetch(address);
  if (!response.ok) throw new Error(`${address.pathname} answered ${response.status}`);
  return response;
}

/** A name that every device takes: letters, digits and dashes. */
export const fileNameOf = (siteName: string): string =>
  siteName
    .normalize('NFKD')
    .replace(/\p{Diacritic}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '') || 'site';
