import { Form, useNavigation } from '@remix-run/react';
import { useState, type ChangeEvent } from 'react';
import { sizeText } from '~/app/photos/size-text';
import { Message } from '../Message';

type Props = {
  readonly mostFiles: number;
  readonly mostBytes: number;
  /** What all photos of this batch show, as the form names it and in words. */
  readonly about: { readonly key: string; readonly text: string } | null;
  readonly refused: readonly string[];
  readonly kept: number;
};

type Chosen = { readonly count: number; readonly bytes: number; readonly tooLarge: readonly string[] };

const NONE: Chosen = { count: 0, bytes: 0, tooLarge: [] };

const photos = (n: number): string => (n === 1 ? '1 photo' : `${n} photos`);

function Outcome({ kept, refused }: Pick<Props, 'kept' | 'refused'>) {
  return (
    <>
      {kept > 0 && <Message tone="good">{photos(kept)} kept.</Message>}
      {refused.length > 0 && (
        <Message tone="bad">
          {kept > 0 ? 'The others of the batch are kept; these are not:' : 'None of these could be kept:'}
          <ul>
            {refused.map((message) => (
              <li key={message}>{message}</li>
            ))}
          </ul>
        </Message>
      )}
    </>
  );
}

/** Many photos at once. Before JavaScript loads it is a plain form; with it, it says what is chosen and under way. */
export function UploadForm({ mostFiles, mostBytes, about, refused, kept }: Props) {
  const { state, formData } = useNavigation();
  const [{ count, bytes, tooLarge }, choose] = useState(NONE);
  const sending = state === 'submitting' && (formData?.has('photo') ?? false);
  const look = (event: ChangeEvent<HTMLInputElement>) => {
    const chosen = [...(event.target.files ?? [])];
    choose({
      count: chosen.length,
      bytes: chosen.reduce((sum, { size }) => sum + size, 0),
      tooLarge: chosen.filter(({ size }) => size > mostBytes).map(({ name }) => name),
    });
  };
  return (
    <Form method="post" encType="multipart/form-data" className="form">
      <Outcome kept={kept} refused={refused} />
      {/* Ahead of the files, so that it is known when the first of them arrives. */}
      <input type="hidden" name="subject" value={about?.key ?? ''} />
      {about && (
        <p>
          They will be linked to <strong>{about.text}</strong>.
        </p>
      )}
      <div className="field">
        <label htmlFor="photo-files">Photos, as many as you like at once</label>
        <p className="field__help" id="photo-files-help">
          JPEG, PNG, WebP, or HEIC where it can be read; each at most {sizeText(mostBytes)}, at most{' '}
          {mostFiles} at a time. Choose the originals: the time and place the camera wrote are read from them.
          Captions come afterwards.
        </p>
        <input
          id="photo-files"
          name="photo"
          type="file"
          multiple
          accept="image/jpeg,image/png,image/webp,image/heic,image/heif,.heic"
          aria-describedby="photo-files-help"
          onChange={look}
        />
      </div>
      <div className="stack">
        <div role="status">
          {count > 0 && (
            <p>
              {sending ? 'Sending' : 'Chosen:'} {photos(count)}, {sizeText(bytes)}.
              {sending && ' Keep this page open; each is kept as soon as it has arrived.'}
            </p>
          )}
          {count > mostFiles && (
            <p>Only the first {mostFiles} will be looked at; send the others afterwards.</p>
          )}
          {tooLarge.length > 0 && <p>Too large and going to be refused: {tooLarge.join(', ')}.</p>}
        </div>
        <div>
          <button className="button button--main" disabled={sending}>
            {sending ? 'Sending …' : 'Keep these photos'}
          </button>
        </div>
      </div>
    </Form>
  );
}
