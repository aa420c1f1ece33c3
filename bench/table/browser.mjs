import { execFileSync } from 'node:child_process';
import { chromium } from 'playwright-core';

export function openBrowser() {
  const executablePath = execFileSync('/bin/sh', ['-c', 'command -v chromium'], { encoding: 'utf8' }).trim();
  return chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu', '--no-first-run'] });
}

/** A picture with the grain and the shades of leather, so that it is as heavy to decode as a photo. */
export async function drawPhoto(browser, { width, height }) {
  const page = await browser.newPage();
  const base64 = await page.evaluate(
    async ({ width, height }) => {
      const canvas = new OffscreenCanvas(width, height);
      const context = canvas.getContext('2d');
      const tile = new ImageData(500, 500);
      let state = 1;
      for (let i = 0; i < tile.data.length; i += 4) {
        state = (1103515245 * state + 12345) % 2147483648;
        const grain = ((state >> 16) & 31) - 16;
        tile.data.set([190 + grain, 140 + grain, 95 + grain, 255], i);
      }
      for (let y = 0; y < height; y += 500)
        for (let x = 0; x < width; x += 500) context.putImageData(tile, x, y);
      const shade = context.createLinearGradient(0, 0, width, height);
      shade.addColorStop(0, 'rgb(0 0 0 / 0)');
      shade.addColorStop(1, 'rgb(0 0 0 / 0.35)');
      context.fillStyle = shade;
      context.fillRect(0, 0, width, height);
      const blob = await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
      const bytes = new Uint8Array(await blob.arrayBuffer());
      let binary = '';
      for (let i = 0; i < bytes.length; i += 0x8000)
        binary += String.fromCharCode(...bytes.subarray(i, i + 0x8000));
      return btoa(binary);
    },
    { width, height },
  );
  await page.close();
  return Buffer.from(base64, 'base64');
}
