no-device = no device yet
