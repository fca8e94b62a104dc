import { defineConfig } from 'vite';
import { VitePWA } from 'vite-plugin-pwa';

/** The workbench: static files that work from any folder and, once loaded, without a network. */
export default defineConfig({
  root: 'web',
  base: './',
  build: { outDir: '../dist/web', emptyOutDir: true, target: 'es2022', reportCompressedSize: true },
  worker: { format: 'es' },
  oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  plugins: [
    VitePWA({
      registerType: 'autoUpdate',
      injectRegister: 'script',
      workbox: {
        globPatterns: ['**/*.{js,css,html,svg,woff2,png,webmanifest,wasm}'],
        // The solver that seats riders works without a network too.
        maximumFileSizeToCacheInBytes: 5 * 1024 * 1024,
        navigateFallback: 'index.html',
      },
      manifest: {
        name: 'Heedway',
        short_name: 'Heedway',
        description: 'May this train leave?',
        display: 'standalone',
        background_color: '#fbf8f0',
        theme_color: '#1b2733',
        start_url: './',
        icons: [{ src: 'icon.svg', sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
      },
    }),
  ],
});
