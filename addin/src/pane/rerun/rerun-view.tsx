/** Place of the re-run of archived workbooks. */
export function RerunView() {
  return (
    <section class="empty-view" aria-labelledby="rerun-title">
      <h2 id="rerun-title">Re-run</h2>
      <p>
        Archived workbooks are re-run on the command line so far:{' '}
        <code>npx draughtbook rerun FOLDER --out rerun.xlsx</code>
      </p>
    </section>
  )
}
