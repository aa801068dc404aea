rule = Each procedure, checklist and fault that a device lists holds something for it.
