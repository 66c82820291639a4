import { useRef } from 'react';

/** A button that opens the device's file chooser. The same file can be chosen twice. */
export function FileButton(props: {
  children: string;
  accept: string;
  multiple?: boolean;
  className?: string;
  onFiles: (files: readonly File[]) => void;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button type="button" className={props.className} onClick={() => input.current?.click()}>
        {props.children}
      </button>
      <input
        ref={input}
        type="file"
        hidden
        accept={props.accept}
        multiple={props.multiple}
        onChange={(event) => {
          const files = [...(event.target.files ?? [])];
          event.target.value = '';
          if (files.length > 0) props.onFiles(files);
        }}
      />
    </>
  );
}
