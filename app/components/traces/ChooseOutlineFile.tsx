import { ChooseFileForm } from '../ChooseFileForm';

type Props = { readonly error?: string; readonly action?: string };

/** The file of an outline: a point on each line. */
export function ChooseOutlineFile({ error, action }: Props) {
  return (
    <ChooseFileForm
      label="File with the points"
      accept=".csv,.txt,.tsv,.dat,.xyz,text/csv,text/plain"
      error={error}
      action={action}
    >
      An x and a y on each line, in mm or inches, in any order of columns. Headings, comments and further
      columns may be in it. The file is kept as it is.
    </ChooseFileForm>
  );
}
