not-kept = { $fault } The run goes on, and is lost when this page is left.
