/** Place of the month's register. */
export function MonthView() {
  return (
    <section class="empty-view" aria-labelledby="month-title">
      <h2 id="month-title">Month</h2>
      <p>
        The month’s register is made on the command line so far:{' '}
        <code>npx draughtbook register FOLDER --out register.xlsx</code>
      </p>
    </section>
  )
}
