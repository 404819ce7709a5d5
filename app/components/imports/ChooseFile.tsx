import { ChooseFileForm } from '../ChooseFileForm';

type Props = {
  readonly error?: string;
  readonly largest: string;
  readonly sample: string;
};

/** The file of an import: a table with names above its columns. */
export function ChooseFile({ error, largest, sample }: Props) {
  return (
    <ChooseFileForm label="CSV file" accept=".csv,.txt,.tsv,text/csv,text/plain" error={error}>
      The first row names the columns. Commas, semicolons or tabs between them; UTF-8; up to {largest}. To try
      it out, take <code>{sample}</code> from the program’s folder.
    </ChooseFileForm>
  );
}
