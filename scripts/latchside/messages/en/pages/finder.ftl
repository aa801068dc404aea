kind-fault = Fault
kind-checklist = Checklist
kind-device = Device
kind-install = Install
kind-procedure = Procedure
kind-caution = Caution
kind-formula = Figure
kind-term = Term
kind-table = Table
kind-tool = Tool
kind-job = Example job
kind-page = Page
kind-source = Source

installing = Install: { $device }

# What people type who look for the installation of a device.
fit = fit { $device }
install = install { $device }
