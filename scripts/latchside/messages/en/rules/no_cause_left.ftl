rule = Some result of each check leaves a cause or leads to another fault.
