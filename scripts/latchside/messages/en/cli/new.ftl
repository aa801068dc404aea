survey = Wrote { $file }. Fill it in, then run:
project = Wrote { $folder }. It is yours to change. Then run:
record = Wrote { $file }. Fill in every { $blank }, then run:
not-empty = { $path } is not empty; nothing was written.
there-already = { $path } is there already; nothing was written.
cannot-write = { $path } cannot be written: { $fault }.
