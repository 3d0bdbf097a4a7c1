import './file-picker.css';

type FilePickerProps = {
  readonly label: string;
  /** As for an input's `accept`: ".json", ".yaml,.yml". */
  readonly accept: string;
  readonly onFile: (file: File) => void;
};

/** A button that opens the system's own file dialog. The file itself is read outside the screens. */
export function FilePicker({ label, accept, onFile }: FilePickerProps) {
  return (
    <label class="button button-plain picker">
      {label}
      <input
        class="picker-input"
        type="file"
        accept={accept}
        onChange={(event) => {
          const file = event.currentTarget.files?.[0];
          // Emptied, so that choosing the same file again after mending it is a change too.
          event.currentTarget.value = '';
          if (file) onFile(file);
        }}
      />
    </label>
  );
}
