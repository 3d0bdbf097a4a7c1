import { spawn } from 'node:child_process';

const OPENERS: Readonly<Partial<Record<NodeJS.Platform, readonly [string, ...string[]]>>> = {
  darwin: ['open'],
  win32: ['cmd', '/c', 'start', ''],
  linux: ['xdg-open'],
};

/** Opens the address in the usual browser. Where there is none, nothing happens: the address has been printed. */
export function openBrowser(address: string): void {
  const opener = OPENERS[process.platform];
  if (!opener || (process.platform === 'linux' && !process.env['DISPLAY'] && !process.env['WAYLAND_DISPLAY'])) return;
  const [command, ...args] = opener;
  const child = spawn(command, [...args, address], { stdio: 'ignore', detached: true });
  child.on('error', () => undefined);
  child.unref();
}
