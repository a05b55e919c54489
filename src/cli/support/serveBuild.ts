import { preview } from 'vite';

export interface Served {
  readonly url: string;
  close(): Promise<void>;
}

/**
 * Serves the built app on loopback only.
 * @param port port to try first; the next free one is taken when it is busy; 0 for any
 */
export async function serveBuild(port: number): Promise<Served> {
  const server = await preview({
    logLevel: 'silent',
    preview: { host: '127.0.0.1', port, strictPort: false, open: false },
  });
  const address = server.httpServer.address();
  const bound = typeof address === 'object' && address ? address.port : port;
  return { url: `http://127.0.0.1:${bound}/`, close: () => server.close() };
}
