on = Screen stays on
refused = Screen: the device refuses to stay on
keep = Keep the screen on
