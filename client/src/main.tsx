import "@fontsource/source-serif-4/latin-400.css";
import "@fontsource/source-serif-4/latin-400-italic.css";
import "@fontsource/source-serif-4/latin-700.css";
import "@mantine/core/styles/baseline.css";
import "@mantine/core/styles/default-css-variables.css";
import "@mantine/core/styles/global.css";
import "@mantine/core/styles/Popover.css";
import "./engraved.css";
import "./desk.css";
import "./shelf/shelf.css";
import { MantineProvider } from "@mantine/core";
import { QueryClient, QueryClientProvider } from "@tanstack/react-query";
import { StrictMode } from "react";
import { createRoot } from "react-dom/client";
import { Desk } from "./Desk";

const nonce = document.querySelector<HTMLMetaElement>("meta[name=style-nonce]")?.content ?? "";
// The host is this machine: it answers without a network.
const queries = new QueryClient({ defaultOptions: { queries: { retry: false, refetchOnWindowFocus: false, networkMode: "always" } } });

createRoot(document.getElementById("desk")!).render(
  <StrictMode>
    <MantineProvider defaultColorScheme="auto" getStyleNonce={() => nonce}>
      <QueryClientProvider client={queries}>
        <Desk />
      </QueryClientProvider>
    </MantineProvider>
  </StrictMode>,
);
