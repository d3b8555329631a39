/** What was kept, by what was done; `kept` where nothing more is known. */
export const doneWords: Readonly<Record<string, string>> = {
  approve: 'Approved, and written in the ledger.',
  override: 'Approved by override, and written in the ledger with your reason.',
  return: 'Returned. It comes back with a new clean attempt at what you asked for.',
  withdraw: 'Withdrawn, and written in the ledger with your reason.',
  sign: 'Signed, and written in the ledger.',
  revoke: 'Taken back, and written in the ledger with your reason.',
  release: 'Released: the attempt counts from now on.',
  accept: 'Accepted: the higher rating counts from now on.',
  close: 'Closed. What was dived and rated stays.',
  look: 'Kept: what you saw counts as a second coach.',
  grant: 'Granted: the coach finds it under “To look at”.',
  ungrant: 'Withdrawn: the coach sees nothing of it from now on.',
  opening: 'Changed, from now on.',
  linked: 'Linked: it counts as a video moment from now on.',
  dropped: 'Taken off the list: it was not filmed after all.',
  kept: 'Kept.',
}
