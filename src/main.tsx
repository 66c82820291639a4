import '@fontsource-variable/atkinson-hyperlegible-next/wght.css';
import { StrictMode } from 'react';
import { createRoot } from 'react-dom/client';
import { App } from './panels/frame/app.tsx';
import { startApp } from './state/start-app.ts';
import { appStore } from './state/store.ts';

const root = document.getElementById('root');
if (!root) throw new Error('The page has no place for the app.');
createRoot(root).render(
  <StrictMode>
    <App />
  </StrictMode>,
);
void startApp(appStore);
