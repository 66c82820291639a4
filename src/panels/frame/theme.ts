import { useEffect } from 'react';
import { useApp } from '../../state/store.ts';

/** Puts the chosen look on the page; "as the device" follows the device while it is open. */
export function useTheme(): void {
  const theme = useApp((app) => app.theme);
  useEffect(() => {
    const device = window.matchMedia('(prefers-color-scheme: dark)');
    const put = () => {
      const dark = theme === 'dark' || (theme === 'as-device' && device.matches);
      document.documentElement.dataset.theme = dark ? 'dark' : 'light';
    };
    put();
    device.addEventListener('change', put);
    return () => device.removeEventListener('change', put);
  }, [theme]);
}
