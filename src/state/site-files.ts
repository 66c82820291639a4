import { type DeviceStore, memoryDeviceStore } from './device-store.ts';

/**
 * The files a site refers to (terrain, weather, pictures), by name. They are kept on the device beside the site;
 * a copy stays in memory, so that a browser that refuses to keep them still works until the tab is closed.
 */
interface HeldFile {
  readonly bytes: ArrayBuffer;
  readonly type: string;
}
const held = new Map<string, HeldFile>();
const urls = new Map<string, string>();
let device: DeviceStore = memoryDeviceStore();

export function keepFilesIn(store: DeviceStore): void {
  device = store;
}

/** Keeps a file under its name; a file of the same name is replaced. False when it stays in memory only. */
export async function keepFile(name: string, bytes: ArrayBuffer, type: string): Promise<boolean> {
  held.set(name, { bytes, type });
  const old = urls.get(name);
  if (old) URL.revokeObjectURL(old);
  urls.delete(name);
  try {
    await device.writeFile(name, bytes, type);
    return true;
  } catch {
    return false;
  }
}

/** The bytes of a file; null when it is not on this device. */
export async function fileBytes(name: string): Promise<ArrayBuffer | null> {
  return (await fetchHeld(name))?.bytes ?? null;
}

/** An address under which the browser can show a file that has been read; null when it is not (yet) at hand. */
export function fileUrl(name: string): string | null {
  const known = urls.get(name);
  if (known) return known;
  const file = held.get(name);
  if (!file) return null;
  const url = URL.createObjectURL(new Blob([file.bytes], { type: file.type }));
  urls.set(name, url);
  return url;
}

async function fetchHeld(name: string): Promise<HeldFile | null> {
  const inMemory = held.get(name);
  if (inMemory) return inMemory;
  const kept = await device.readFile(name).catch(() => null);
  if (kept) held.set(name, kept);
  return kept;
}
