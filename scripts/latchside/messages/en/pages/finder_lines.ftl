item = { $subject } — { $state }
value = { $value }: { $figure }
