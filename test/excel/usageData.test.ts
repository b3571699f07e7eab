import { OfficeAddinUsageData, UsageDataLevel, UsageDataReportingMethod, readUsageDataLevel } from 'office-addin-usage-data';

test('the Office tools behind npm run excel report no usage, even when told to', () => {
  expect(readUsageDataLevel('office-addin-usage-data')).toBe('off');
  const reporter = new OfficeAddinUsageData({
    groupName: 'g', projectName: 'p', instrumentationKey: 'k', promptQuestion: '', raisePrompt: false,
    usageDataLevel: UsageDataLevel.on, method: UsageDataReportingMethod.applicationInsights, isForTesting: false,
  });
  reporter.setUsageDataOn();
  expect(reporter.isUsageDataOn()).toBe(false);
});
