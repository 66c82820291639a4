// npm start: installs what is missing, builds the app and serves it on http://localhost:4173 (PORT overrides).
import { createServer } from 'node:net';
import { installIfMissing, root } from './install.mjs';

const port = Number(process.env.PORT ?? 4173);
if (!Number.isInteger(port) || port < 1 || port > 65535) {
  console.error(`PORT is ${process.env.PORT}: a whole number from 1 to 65535 is expected.`);
  process.exit(2);
}

/** Resolves to the code of the error met when listening there, or null. */
const listeningFails = (host) =>
  new Promise((resolve) => {
    const probe = createServer();
    probe.once('error', (error) => resolve(error.code));
    probe.listen(port, host, () => probe.close(() => resolve(null)));
  });

// A browser may take "localhost" for either address, so both must be free; a machine may lack the second.
for (const host of ['127.0.0.1', '::1']) {
  const code = await listeningFails(host);
  if (code === 'EADDRINUSE') {
    console.error(
      `Port ${port} is already in use. Stop what runs there, or choose another: PORT=${port + 1} npm start`,
    );
    process.exit(1);
  }
  if (code === 'EACCES') {
    console.error(`Port ${port} may not be opened by this user. Choose one above 1023: PORT=4173 npm start`);
    process.exit(1);
  }
}

installIfMissing();
process.chdir(root);
const { build, preview } = await import('vite');
console.log('Building Leeglade ...');
await build({ logLevel: 'warn' });
const server = await preview({ preview: { port, strictPort: true, host: '127.0.0.1' }, logLevel: 'warn' });
console.log(`Leeglade is at http://localhost:${port} (Ctrl+C stops it)`);

let stopping = false;
for (const signal of ['SIGINT', 'SIGTERM']) {
  process.on(signal, () => {
    if (stopping) return;
    stopping = true;
    server.httpServer.closeAllConnections?.();
    server.httpServer.close(() => process.exit(0));
  });
}
