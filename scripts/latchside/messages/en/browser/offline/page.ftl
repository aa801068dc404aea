missing = The page you asked for is not saved on this device, and the site does not answer.
try-again = Try { $address } again
try-home = Try home again
state = { $state }.
every-page = Saved: every page.
groups = Saved: { $groups }.
old = This copy is old. Open this page where there is signal before you rely on it.
no-age = The clock of this device was set back, so its age is not known.
compared =
    { $days ->
        [0] Last compared with the site today.
        [1] Last compared with the site yesterday.
       *[other] Last compared with the site { $days } days ago.
    }
broke-off = Saving broke off: { $trouble }. What had come is kept; another try goes on from there.
waiting = Waiting: version { $version }, { $date }.
held =
    { $by ->
        [list]
            A checklist or a visit is in progress, so the new version waits. Finish it first; or change now, and ticks
            and readings are kept.
       *[pages] Other pages of this library are open, so the new version waits. Close them first, or change now.
    }
use = Use the new version now
use-all-the-same = Use the new version all the same
save-everything = Save everything: { $size } more
all-saved = Every page is saved.
not-all-saved = Not everything is saved: { $why }.
save = Save it now
compare = Compare with the site now
compared-now = Compared just now.
no-answer = The site does not answer.
ask-to-keep = Ask the browser to keep it
promised = The browser has promised to keep it.
no-promise = The browser gives no promise to keep it. It stays saved until space is short.
