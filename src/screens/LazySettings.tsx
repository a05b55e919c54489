import type { SettingsDialogProps } from './SettingsDialog.tsx';
import { useLater } from './shared/useLater.ts';

/** The settings; their code comes when they are first opened. */
export function LazySettings(props: SettingsDialogProps) {
  const dialog = useLater(() => import('./SettingsDialog.tsx'), true);
  return dialog && <dialog.SettingsDialog {...props} />;
}
