import { Button } from './shared/Button.tsx';
import { Dialog } from './shared/Dialog.tsx';
import { RadioField, SelectField } from './shared/Field.tsx';
import { mainsWords } from './shared/words.ts';
import type { Settings } from './shell.ts';

export interface SettingsDialogProps {
  readonly settings: Settings;
  readonly onChange: (settings: Settings) => void;
  readonly onClose: () => void;
}

/** Choices about words, sound and motion; each takes effect at once. */
export function SettingsDialog(props: SettingsDialogProps) {
  const { settings } = props;
  const change = (part: Partial<Settings>) => props.onChange({ ...settings, ...part });
  return (
    <Dialog title="Settings" onClose={props.onClose}>
      <RadioField
        label="Trade words"
        value={settings.vocabulary}
        options={[
          { value: 'british', label: 'British: earth, segment' },
          { value: 'american', label: 'American: ground, bar' },
        ]}
        onChange={(vocabulary) => change({ vocabulary })}
      />
      <RadioField
        label="Sound"
        value={settings.muted ? 'off' : 'on'}
        options={[
          { value: 'on', label: 'On' },
          { value: 'off', label: 'Off: read the captions' },
        ]}
        onChange={(sound) => change({ muted: sound === 'off' })}
      />
      <RadioField
        label="Motion"
        value={settings.motion}
        options={[
          { value: 'system', label: 'As this device asks' },
          { value: 'still', label: 'Keep everything still' },
        ]}
        onChange={(motion) => change({ motion })}
      />
      <SelectField
        label="Jobs shown"
        value={settings.mains}
        options={[
          { value: 'all', label: 'Every mains supply' },
          { value: '230V50Hz', label: mainsWords('230V50Hz') },
          { value: '120V60Hz', label: mainsWords('120V60Hz') },
        ]}
        onChange={(mains) => change({ mains })}
      />
      <div class="dialog-acts">
        <Button kind="main" onPress={props.onClose}>
          Done
        </Button>
      </div>
    </Dialog>
  );
}
