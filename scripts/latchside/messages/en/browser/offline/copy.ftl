# Why nothing is saved; it stands within "not-saved".
not-secure = this address is not a secure one (https), and browsers save pages of secure ones only
cannot = this browser cannot save pages, or not in a private window
switched-off = saving is switched off for this site
no-worker = the worker is not there
replaced = the worker was replaced

not-saved = Not saved: { $why }
not-yet = Not saved yet: keep this page open with signal
saving = Saving: { $progress }
starting = starting
files = { $done } of { $all } files
stamp = version { $version }, { $date }
stamp-old =
    { $age ->
        [one] version { $version }, { $date }, not compared with the site for 1 day
       *[other] version { $version }, { $date }, not compared with the site for { $age } days
    }
saving-more = Saving: { $progress }; saved is { $stamp }
saved = Saved for offline: { $stamp }
ready = Update ready; saved is { $stamp }
