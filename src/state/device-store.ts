import { type DBSchema, type IDBPDatabase, openDB } from 'idb';

/** What is kept on this device: the open site as text, the files it refers to by name, and the person's choices. */
interface DeviceSchema extends DBSchema {
  sites: { key: string; value: { readonly text: string; readonly savedAtMs: number } };
  files: { key: string; value: { readonly bytes: ArrayBuffer; readonly type: string } };
  choices: { key: string; value: unknown };
}
export type DeviceDatabase = IDBPDatabase<DeviceSchema>;

export interface DeviceStore {
  readSite(): Promise<{ text: string; savedAtMs: number } | null>;
  writeSite(text: string, savedAtMs: number): Promise<void>;
  /** For the moment the page goes away: done when it returns. Read back by `readSite` where it is the newest. */
  writeSiteNow(text: string, savedAtMs: number): void;
  /** Texts of the sites that were open before, the latest first. */
  readEarlier(): Promise<readonly string[]>;
  writeEarlier(texts: readonly string[]): Promise<void>;
  readFile(name: string): Promise<{ bytes: ArrayBuffer; type: string } | null>;
  writeFile(name: string, bytes: ArrayBuffer, type: string): Promise<void>;
  readChoices(): Promise<Record<string, unknown>>;
  writeChoices(choices: Record<string, unknown>): Promise<void>;
}

const OPEN_SITE = 'open';
const VIEW = 'view';
const EARLIER = 'earlier-sites';

/** The device's own store (IndexedDB). Rejects when the browser refuses it (private window, full disk). */
export function openDeviceStore(name = 'leeglade'): DeviceStore {
  let opened: Promise<DeviceDatabase> | null = null;
  const database = () => {
    opened ??= openDB<DeviceSchema>(name, 1, {
      upgrade(db) {
        db.createObjectStore('sites');
        db.createObjectStore('files');
        db.createObjectStore('choices');
      },
      terminated() {
        opened = null;
      },
    });
    return opened;
  };
  return {
    readSite: async () => {
      const kept = (await (await database()).get('sites', OPEN_SITE)) ?? null;
      const urgent = readUrgent(name);
      return urgent && urgent.savedAtMs > (kept?.savedAtMs ?? 0) ? urgent : kept;
    },
    writeSite: async (text, savedAtMs) => {
      await (await database()).put('sites', { text, savedAtMs }, OPEN_SITE);
      localStorage.removeItem(urgentKey(name));
    },
    writeSiteNow: (text, savedAtMs) =>
      localStorage.setItem(urgentKey(name), JSON.stringify({ text, savedAtMs })),
    readEarlier: async () =>
      ((await (await database()).get('choices', EARLIER)) as readonly string[] | undefined) ?? [],
    writeEarlier: async (texts) => {
      await (await database()).put('choices', texts, EARLIER);
    },
    readFile: async (file) => (await (await database()).get('files', file)) ?? null,
    writeFile: async (file, bytes, type) => {
      await (await database()).put('files', { bytes, type }, file);
    },
    readChoices: async () =>
      ((await (await database()).get('choices', VIEW)) as Record<string, unknown> | undefined) ?? {},
    writeChoices: async (choices) => {
      await (await database()).put('choices', choices, VIEW);
    },
  };
}

const urgentKey = (name: string): string => `${name}-unsaved`;

function readUrgent(name: string): { text: string; savedAtMs: number } | null {
  try {
    return JSON.parse(localStorage.getItem(urgentKey(name)) ?? 'null');
  } catch {
    return null;
  }
}

/** The same in memory, for tests and for browsers that refuse to keep anything. */
export function memoryDeviceStore(): DeviceStore {
  let site: { text: string; savedAtMs: number } | null = null;
  let choices: Record<string, unknown> = {};
  let earlier: readonly string[] = [];
  const files = new Map<string, { bytes: ArrayBuffer; type: string }>();
  return {
    readEarlier: async () => earlier,
    writeEarlier: async (texts) => {
      earlier = texts;
    },
    readSite: async () => site,
    writeSite: async (text, savedAtMs) => {
      site = { text, savedAtMs };
    },
    writeSiteNow: (text, savedAtMs) => {
      site = { text, savedAtMs };
    },
    readFile: async (name) => files.get(name) ?? null,
    writeFile: async (name, bytes, type) => {
      files.set(name, { bytes, type });
    },
    readChoices: async () => choices,
    writeChoices: async (next) => {
      choices = next;
    },
  };
}
