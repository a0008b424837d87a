export interface WebWorkbench {
  readonly origin: string;
  stop(): Promise<void>;
}

export function serveWebWorkbench(options: { readonly workspace: string }): Promise<WebWorkbench>;
