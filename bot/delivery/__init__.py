"""Mail that a crash cannot lose: what comes in is written before it is confirmed, what goes out before it is sent."""
