alike = { $device } and { $others } alike
