avoid = How to avoid it
who-decides = Who decides
facts = Facts
