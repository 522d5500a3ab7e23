import react from "@vitejs/plugin-react";
import { defineConfig } from "vite";

// Built below artifacts, from where the Web project takes it into its library.
export default defineConfig({
  plugins: [react()],
  build: {
    outDir: "../artifacts/page",
    emptyOutDir: true,
    assetsInlineLimit: 0,
    modulePreload: { polyfill: false },
  },
});
